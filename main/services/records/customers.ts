import type { JobStatus } from '../../domain/job/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import {
  checkNote,
  checkText,
  type Finish,
  type PanelNoted,
  type SizeClass,
} from '../../domain/shop/index.ts'
import { likelySame, type Person, readMailAddress, readPhone, showPhone } from '../../domain/vehicle/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst, listed } from '../desk/ask.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import { archiveRow, type RowSeen, restoreRow, saveRow } from '../desk/keep.ts'
import { shopOf } from '../desk/shopView.ts'
import { comingVisits } from '../floor/comingVisits.ts'
import type { CustomerInput } from './inputs.ts'

export type CustomerView = Awaited<ReturnType<typeof getCustomer>>
export type VehicleView = CustomerView['vehicles'][number]

/** One stay of a car at the shop, as its customer's page lists it. */
export type PastJobView = CustomerView['visits'][number]

/** One customer with their vehicles (archived ones last) and every visit, newest first. */
export async function getCustomer(desk: Desk, input: { id: string }) {
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
  const { jobs, vehicles, ...customer } = found(
    row,
    { id: input.id },
    'There is no such customer; look them up again.',
  )
  return {
    ...customer,
    vehicles: vehicles.map(vehicle => ({
      ...vehicle,
      sizeClass: vehicle.sizeClass as SizeClass,
      finish: vehicle.finish as Finish,
      panels: fromJson<PanelNoted[] | null>(vehicle.panels) ?? [],
    })),
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

const kept = (tx: Tx) => ({ table: tx.customer, entity: 'customer' })

/** Adds a customer, or changes one. Somebody who is likely on file already is added only once that was `accepted`. */
export function saveCustomer(desk: Desk, input: CustomerInput): Promise<RowSeen> {
  return act(desk, (tx, audit) => writeCustomer(tx, audit, input))
}

/** The same inside another act. */
export async function writeCustomer(tx: Tx, audit: Audit, input: CustomerInput): Promise<RowSeen> {
  const { country } = await shopOf(tx)
  const data = {
    name: checkText(input.name, 'name', "The customer's name"),
    phone: input.phone?.trim() ? readPhone(input.phone, country).e164 : null,
    email: input.email?.trim() ? readMailAddress(input.email) : null,
    note: checkNote(input.note ?? '', 'note'),
  }
  if (input.id === undefined) await askIfKnown(tx, data, country, input.accepted)
  const { id, version } = await saveRow(audit, kept(tx), input, { data })
  return { id, version }
}

async function askIfKnown(
  tx: Tx,
  person: Person,
  country: string,
  accepted: boolean | undefined,
): Promise<void> {
  // The database finds them roughly; what is alike is for the domain to say.
  const near = await tx.customer.findMany({
    where: {
      archivedAt: null,
      OR: [
        { name: { contains: person.name } },
        ...(person.phone === null ? [] : [{ phone: person.phone }]),
        ...(person.email === null ? [] : [{ email: person.email }]),
      ],
    },
    include: { vehicles: { where: { archivedAt: null }, select: { plate: true } } },
    take: 500,
  })
  const lines = near
    .filter(other => likelySame(person, other))
    .map(({ name, phone, email, vehicles }) =>
      [name, phone && showPhone(phone, country), email, ...vehicles.map(({ plate }) => plate)]
        .filter(Boolean)
        .join(', '),
    )
  askFirst('known-already', lines, {
    field: 'name',
    lead: 'Somebody like this is on file already. Add them a second time?',
    accepted,
  })
}

/** Puts a customer away. Refused while a car of theirs is booked or in the shop. */
export function archiveCustomer(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const { id } = input
    const lines = await comingVisits(tx, { customerId: id }, at)
    if (lines.length > 0)
      refuse(
        'customer-booked',
        { id },
        listed('They have a car booked or in the shop; cancel that or hand it over first:', lines),
      )
    await archiveRow(audit, kept(tx), input, { at })
  })
}

/** Takes an archived customer back. */
export function restoreCustomer(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, (tx, audit) => restoreRow(audit, kept(tx), input))
}
