import { zonedOf } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkNote, checkPanels } from '../../domain/shop/index.ts'
import { checkVin, modelYearOf, plateKey, readPlate } from '../../domain/vehicle/index.ts'
import { noJson, toJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { listed } from '../desk/ask.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import { archiveRow, type RowSeen, restoreRow, saveRow } from '../desk/keep.ts'
import { comingVisits } from '../floor/comingVisits.ts'
import type { VehicleInput } from './inputs.ts'

/** The first year anybody could own a motor car. Common knowledge, no source. */
const firstYear = 1886

const kept = (tx: Tx) => ({ table: tx.vehicle, entity: 'vehicle' })

export interface SavedVehicle extends RowSeen {
  /** What may be wrong but is no reason to refuse: a VIN whose check digit fails, or whose year is another. */
  warning: string | null
}

/** Adds a vehicle, or changes one. Two vehicles in use never bear one plate. */
export function saveVehicle(desk: Desk, input: VehicleInput): Promise<SavedVehicle> {
  return act(desk, (tx, audit, at) => writeVehicle(tx, audit, at, input))
}

/** The same inside another act. */
export async function writeVehicle(
  tx: Tx,
  audit: Audit,
  at: number,
  input: VehicleInput,
): Promise<SavedVehicle> {
  const { customerId, sizeClass, finish } = input
  const vin = input.vin?.trim() ? checkVin(input.vin) : null
  const problem = vin?.problems[0]
  if (problem) refuse('vin-bad', { vin: input.vin }, problem.message)
  const data = {
    customerId,
    sizeClass,
    finish,
    paint: input.paint ?? 'unknown',
    panels: (input.panels ?? []).length > 0 ? checkPanels(input.panels ?? [], 'panels').map(toJson) : noJson,
    plate: input.plate.trim() ? readPlate(input.plate).shown : '',
    make: checkNote(input.make ?? '', 'make', 60),
    model: checkNote(input.model ?? '', 'model', 60),
    colour: checkNote(input.colour ?? '', 'colour', 60),
    year: checkYear(input.year ?? null, zonedOf(at, 'UTC').year + 2),
    vin: vin?.vin ?? null,
    note: checkNote(input.note ?? '', 'note'),
  }
  found(
    await tx.customer.findFirst({ where: { id: customerId, archivedAt: null } }),
    { customerId },
    say('There is no such customer; look them up again.'),
  )
  await assertPlateFree(tx, data.plate, input.id ?? '')
  const { id, version, changes } = await saveRow(audit, kept(tx), input, { data })
  if ('customerId' in changes)
    refuse(
      'owner-changed',
      { customerId },
      say('A car changes hands on a day: open it and give it its new owner there.'),
    )
  return { id, version, warning: vin?.warning ?? yearWarning(vin?.vin ?? '', data.year) }
}

/**
 * A vehicle that can be booked: neither it nor its customer was put away, by a desk that looked at them at the same time.
 * @throws Refusal `missing`.
 */
export async function vehicleInUse(tx: Tx, vehicleId: string) {
  return found(
    await tx.vehicle.findFirst({
      where: { id: vehicleId, archivedAt: null, customer: { archivedAt: null } },
    }),
    { vehicleId },
    say('This vehicle or its customer was put away; take them back first, or choose another.'),
  )
}

/** Puts a vehicle away: sold, scrapped. Refused while it is booked or in the shop. */
export function archiveVehicle(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const { id } = input
    const lines = await comingVisits(tx, { vehicleId: id }, at)
    if (lines.length > 0)
      refuse(
        'vehicle-booked',
        { id },
        listed(say('This car is booked or in the shop; cancel that or hand it over first:'), lines),
      )
    await archiveRow(audit, kept(tx), input, { at })
  })
}

/** Takes an archived vehicle back, unless another bears its plate by now. */
export function restoreVehicle(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit) => {
    await restoreRow(audit, kept(tx), input)
    const { id, plate } = await tx.vehicle.findUniqueOrThrow({ where: { id: input.id } })
    await assertPlateFree(tx, plate, id)
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
    refuse(
      'plate-taken',
      { plate },
      say(
        '{plate} is already on a car of {name}; open that car and give it its new owner, or archive it first.',
        { plate: twin.plate, name: twin.customer.name },
      ),
    )
}

/** The year code of a VIN means one of two years, thirty apart; elsewhere than in North America it may mean none. */
function yearWarning(vin: string, year: number | null): string | null {
  const read = modelYearOf(vin)
  if (!read || year === null || year === read.year || year === read.otherYear) return null
  return say(
    'The VIN says {year} or {otherYear}, not {year2}; outside North America its year code may mean nothing.',
    { year: read.year, otherYear: read.otherYear, year2: year },
  )
}

function checkYear(year: number | null, latest: number): number | null {
  if (year !== null && (!Number.isInteger(year) || year < firstYear || year > latest))
    refuse(
      'year-bad',
      { year },
      say('{year} is no model year; use {firstYear} to {latest}, or leave it empty.', {
        year,
        firstYear,
        latest,
      }),
    )
  return year
}
