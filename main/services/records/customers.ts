import { Refusal } from '../../domain/refusal.ts'
import { checkNote, checkText, type Finish, type SizeClass } from '../../domain/shop/index.ts'
import { readMailAddress, readPhone } from '../../domain/vehicle/index.ts'
import { assertFresh } from '../../store/store.ts'
import { listed } from '../desk/ask.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { comingVisits } from '../floor/comingVisits.ts'
import type { JobStatus } from '../floor/views.ts'

export interface VehicleView {
  id: string
  plate: string
  make: string
  model: string
  colour: string
  year: number | null
  vin: string | null
  sizeClass: SizeClass
  finish: Finish
  note: string
  archivedAt: number | null
  version: number
}

/** One stay of a car at the shop, as its customer's page lists it. */
export interface PastJobView {
  jobId: string
  number: number
  status: JobStatus
  plate: string
  treatments: string[]
  priceMinor: number
  dropOffAt: number
  handoverAt: number
  leftAt: number | null
}

export interface CustomerView {
  id: string
  name: string
  /** E.164. */
  phone: string | null
  email: string | null
  note: string
  archivedAt: number | null
  version: number
  vehicles: VehicleView[]
  /** Newest first. */
  visits: PastJobView[]
}

/** One customer with their vehicles (archived ones last) and every visit. */
export async function getCustomer(desk: Desk, input: { id: string }): Promise<CustomerView> {
  const row = await desk.store.read.customer.findUnique({
    where: { id: input.id },
    include: {
      vehicles: {
        orderBy: [{ archivedAt: { sort: 'asc', nulls: 'first' } }, { id: 'asc' }],
        omit: { customerId: true },
      },
      jobs: {
        orderBy: { dropOffAt: 'desc' },
        include: { treatments: { orderBy: { position: 'asc' } }, vehicle: { select: { plate: true } } },
      },
    },
  })
  if (!row) throw new Refusal('missing', 'id', input.id, 'There is no such customer; look them up again.')
  const { jobs, vehicles, ...customer } = row
  return {
    ...customer,
    vehicles: vehicles as VehicleView[],
    visits: jobs.map(job => ({
      jobId: job.id,
      number: job.number,
      status: job.status as JobStatus,
      plate: job.vehicle.plate,
      treatments: job.treatments.map(treatment => treatment.name),
      priceMinor: job.treatments.reduce((sum, treatment) => sum + treatment.priceMinor, 0),
      dropOffAt: job.dropOffAt,
      handoverAt: job.handoverAt,
      leftAt: job.leftAt,
    })),
  }
}

export interface CustomerInput {
  id?: string | undefined
  version?: number | undefined
  name: string
  /** As typed; read in the shop's country unless it carries a country code. */
  phone?: string | null | undefined
  email?: string | null | undefined
  note?: string | undefined
}

/** Adds a customer, or changes one. */
export async function saveCustomer(
  desk: Desk,
  input: CustomerInput,
): Promise<{ id: string; version: number }> {
  const name = checkText(input.name, 'name', "The customer's name")
  const email = input.email?.trim() ? readMailAddress(input.email) : null
  const note = checkNote(input.note ?? '', 'note')
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const { country } = await shopOf(tx)
    const phone = input.phone?.trim() ? readPhone(input.phone, country).e164 : null
    const data = { name, phone, email, note }
    if (input.id === undefined) {
      const row = await tx.customer.create({ data })
      audit({ act: 'added', entity: 'customer', entityId: row.id, detail: data })
      return { id: row.id, version: row.version }
    }
    const { id, version = 0 } = input
    const before = await tx.customer.findUnique({ where: { id } })
    const { count } = await tx.customer.updateMany({
      where: { id, version },
      data: { ...data, version: { increment: 1 } },
    })
    assertFresh(count, 'customer', id)
    audit({ act: 'changed', entity: 'customer', entityId: id, detail: changesBetween(before!, data) })
    return { id, version: version + 1 }
  })
}

/** Puts a customer away. Refused while a car of theirs is booked or in the shop. */
export async function archiveCustomer(desk: Desk, input: { id: string; version: number }): Promise<void> {
  const at = desk.now()
  await desk.store.transact({ who: desk.who, at }, async (tx, audit) => {
    const lines = await comingVisits(tx, { customerId: input.id }, at)
    if (lines.length > 0)
      throw new Refusal(
        'customer-booked',
        'id',
        input.id,
        listed('They have a car booked or in the shop; cancel that or hand it over first:', lines),
      )
    const { count } = await tx.customer.updateMany({
      where: { ...input, archivedAt: null },
      data: { archivedAt: at, version: { increment: 1 } },
    })
    assertFresh(count, 'customer', input.id)
    audit({ act: 'archived', entity: 'customer', entityId: input.id })
  })
}

/** Takes an archived customer back. */
export async function restoreCustomer(desk: Desk, input: { id: string; version: number }): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const { count } = await tx.customer.updateMany({
      where: { ...input, NOT: { archivedAt: null } },
      data: { archivedAt: null, version: { increment: 1 } },
    })
    assertFresh(count, 'customer', input.id)
    audit({ act: 'restored', entity: 'customer', entityId: input.id })
  })
}
