import { zonedOf } from '../../domain/calendar/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { checkNote, type Finish, type SizeClass } from '../../domain/shop/index.ts'
import { checkVin, plateKey, readPlate } from '../../domain/vehicle/index.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { listed } from '../desk/ask.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import { comingVisits } from '../floor/comingVisits.ts'

export interface VehicleInput {
  id?: string | undefined
  version?: number | undefined
  /** Another one than before: the car has a new owner. */
  customerId: string
  /** Empty: none yet. */
  plate: string
  make: string
  model: string
  colour: string
  year?: number | null | undefined
  vin?: string | null | undefined
  sizeClass: SizeClass
  finish: Finish
  note: string
}

/** The first year anybody could own a motor car. Common knowledge, no source. */
const firstYear = 1886

/**
 * Adds a vehicle, or changes one. Two vehicles in use never bear one plate. `warning` says what may be wrong but is no
 * reason to refuse: a VIN whose check digit fails.
 */
export async function saveVehicle(
  desk: Desk,
  input: VehicleInput,
): Promise<{ id: string; version: number; warning: string | null }> {
  const { customerId, sizeClass, finish } = input
  const vin = input.vin?.trim() ? checkVin(input.vin) : null
  const problem = vin?.problems[0]
  if (problem) throw new Refusal('vin-bad', 'vin', input.vin, problem.message)
  const data = {
    customerId,
    sizeClass,
    finish,
    plate: input.plate.trim() ? readPlate(input.plate).shown : '',
    make: checkNote(input.make, 'make', 60),
    model: checkNote(input.model, 'model', 60),
    colour: checkNote(input.colour, 'colour', 60),
    year: checkYear(input.year ?? null, zonedOf(desk.now(), 'UTC').year + 2),
    vin: vin?.vin ?? null,
    note: checkNote(input.note, 'note'),
  }
  const warning = vin?.warning ?? null
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const owner = await tx.customer.findFirst({ where: { id: customerId, archivedAt: null } })
    if (!owner)
      throw new Refusal('missing', 'customerId', customerId, 'There is no such customer; look them up again.')
    await assertPlateFree(tx, data.plate, input.id ?? '')
    if (input.id === undefined) {
      const row = await tx.vehicle.create({ data })
      audit({ act: 'added', entity: 'vehicle', entityId: row.id, detail: data })
      return { id: row.id, version: row.version, warning }
    }
    const { id, version = 0 } = input
    const before = await tx.vehicle.findUnique({ where: { id } })
    const { count } = await tx.vehicle.updateMany({
      where: { id, version },
      data: { ...data, version: { increment: 1 } },
    })
    assertFresh(count, 'vehicle', id)
    audit({ act: 'changed', entity: 'vehicle', entityId: id, detail: changesBetween(before!, data) })
    return { id, version: version + 1, warning }
  })
}

/** Puts a vehicle away: sold, scrapped. Refused while it is booked or in the shop. */
export async function archiveVehicle(desk: Desk, input: { id: string; version: number }): Promise<void> {
  const at = desk.now()
  await desk.store.transact({ who: desk.who, at }, async (tx, audit) => {
    const lines = await comingVisits(tx, { vehicleId: input.id }, at)
    if (lines.length > 0)
      throw new Refusal(
        'vehicle-booked',
        'id',
        input.id,
        listed('This car is booked or in the shop; cancel that or hand it over first:', lines),
      )
    const { count } = await tx.vehicle.updateMany({
      where: { ...input, archivedAt: null },
      data: { archivedAt: at, version: { increment: 1 } },
    })
    assertFresh(count, 'vehicle', input.id)
    audit({ act: 'archived', entity: 'vehicle', entityId: input.id })
  })
}

/** Takes an archived vehicle back, unless another bears its plate by now. */
export async function restoreVehicle(desk: Desk, input: { id: string; version: number }): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const vehicle = await tx.vehicle.findUnique({ where: { id: input.id } })
    if (vehicle) await assertPlateFree(tx, vehicle.plate, vehicle.id)
    const { count } = await tx.vehicle.updateMany({
      where: { ...input, NOT: { archivedAt: null } },
      data: { archivedAt: null, version: { increment: 1 } },
    })
    assertFresh(count, 'vehicle', input.id)
    audit({ act: 'restored', entity: 'vehicle', entityId: input.id })
  })
}

async function assertPlateFree(tx: Tx, plate: string, ownId: string): Promise<void> {
  const key = plateKey(plate)
  if (key === '') return
  const vehicles = await tx.vehicle.findMany({
    where: { archivedAt: null, NOT: [{ id: ownId }, { plate: '' }] },
    select: { plate: true, customer: { select: { name: true } } },
  })
  const twin = vehicles.find(vehicle => plateKey(vehicle.plate) === key)
  if (twin)
    throw new Refusal(
      'plate-taken',
      'plate',
      plate,
      `${twin.plate} is already on a car of ${twin.customer.name}; open that car and give it its new owner, or ` +
        'archive it first.',
    )
}

function checkYear(year: number | null, latest: number): number | null {
  if (year !== null && (!Number.isInteger(year) || year < firstYear || year > latest))
    throw new Refusal(
      'year-bad',
      'year',
      year,
      `${year} is no model year; use ${firstYear} to ${latest}, or leave it empty.`,
    )
  return year
}
