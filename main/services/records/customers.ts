import type { Verdict } from '../../domain/floor/index.ts'
import { type JobStatus, statusAt } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import {
  type CustomerKind,
  checkNote,
  checkTags,
  checkText,
  type Finish,
  type PaintSystem,
  type PanelNoted,
  type SizeClass,
} from '../../domain/shop/index.ts'
import type { Channel } from '../../domain/upkeep/index.ts'
import {
  likelySame,
  nameKey,
  type Person,
  readMailAddress,
  readPhone,
  showPhone,
} from '../../domain/vehicle/index.ts'
import { fromJson } from '../../store/json.ts'
import { namesInUse } from '../../store/peopleRows.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst, listed } from '../desk/ask.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import { archiveRow, type RowSeen, restoreRow, saveRow } from '../desk/keep.ts'
import { shopOf } from '../desk/shopView.ts'
import { comingVisits } from '../floor/comingVisits.ts'
import { nameOfCar } from '../floor/jobRows.ts'
import { judged, wholeFloor } from '../floor/judged.ts'
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
      contacts: {
        orderBy: [{ callFirst: 'desc' }, { name: 'asc' }, { id: 'asc' }],
        omit: { customerId: true },
      },
      gave: {
        orderBy: [{ onDay: 'desc' }, { id: 'desc' }],
        include: { vehicle: true, to: { select: { id: true, name: true } } },
      },
    },
  })
  const { jobs, vehicles, gave, kind, tags, ...customer } = found(
    row,
    { id: input.id },
    say('There is no such customer; look them up again.'),
  )
  const floor = await wholeFloor(desk.store.read, desk.now())
  const verdicts = new Map(
    jobs.map(job => [job.id, judged(floor).of({ ...job, status: statusAt(job, floor.nowAt) })] as const),
  )
  return {
    ...customer,
    kind: kind as CustomerKind,
    lastSaid: await lastSaidTo(desk.store.read, input.id),
    tags: fromJson<string[]>(tags),
    merges: await mergesOf(desk.store.read, input.id),
    /** Cars that were theirs, with who has them since. */
    formerCars: gave
      .filter(({ fromId, toId }) => fromId !== toId)
      .map(({ id, vehicleId, vehicle, onDay, to }) => ({
        id,
        vehicleId,
        carName: nameOfCar(vehicle),
        onDay,
        toId: to.id,
        toName: to.name,
      })),
    vehicles: vehicles.map(vehicle => ({
      ...vehicle,
      sizeClass: vehicle.sizeClass as SizeClass,
      finish: vehicle.finish as Finish,
      paint: vehicle.paint as PaintSystem,
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
      leftAt: job.leftAt,
      promisedAt: job.promisedAt,
      ...standingOf(verdicts.get(job.id)!),
    })),
  }
}

/** What they were told last, by whichever way; null: nothing yet. */
async function lastSaidTo(tx: Tx, customerId: string) {
  const sent = { where: { customerId, sentAt: { not: null } }, orderBy: { sentAt: 'desc' } } as const
  const shown = { sentAt: true, channel: true, subject: true } as const
  const words = await tx.jobWords.findFirst({ ...sent, select: { ...shown, kind: true } })
  const reminder = await tx.message.findFirst({ ...sent, select: shown })
  const rows = [words, reminder && { ...reminder, kind: null }].flatMap(row => row ?? [])
  const [last] = rows.sort((a, b) => (b.sentAt ?? 0) - (a.sentAt ?? 0))
  if (!last) return null
  const { sentAt, channel, subject, kind } = last
  return { at: sentAt ?? 0, channel: channel as Channel, subject, kind }
}

/** How a visit's promise stands, the same everywhere. */
function standingOf({ standing, expectedAt, lateMin, lack, unfetchedAt }: Verdict) {
  return { standing, handoverAt: expectedAt, lateMin, lack, unfetchedAt }
}

/** The entries that were made one with this, or this one with another; newest first. */
async function mergesOf(tx: Tx, customerId: string) {
  const rows = await tx.merge.findMany({
    where: { undoneAt: null, OR: [{ keptId: customerId }, { goneId: customerId }] },
    orderBy: { id: 'desc' },
    take: 50,
    select: { id: true, keptId: true, goneId: true, at: true, who: true },
  })
  const others = await tx.customer.findMany({
    where: { id: { in: rows.flatMap(({ keptId, goneId }) => [keptId, goneId]) } },
    select: { id: true, name: true },
  })
  const nameOf = new Map(others.map(({ id, name }) => [id, name]))
  return rows.map(({ id, keptId, goneId, at, who }) => ({
    id,
    at,
    who,
    /** Whether this is the entry that stayed. */
    stayed: keptId === customerId,
    otherId: keptId === customerId ? goneId : keptId,
    otherName: nameOf.get(keptId === customerId ? goneId : keptId) ?? '',
  }))
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
    name: checkText(input.name, 'name', say("The customer's name")),
    phone: input.phone?.trim() ? readPhone(input.phone, country).e164 : null,
    email: input.email?.trim() ? readMailAddress(input.email) : null,
    note: checkNote(input.note ?? '', 'note'),
    kind: input.kind ?? 'person',
    tags: checkTags(input.tags ?? []),
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
  const key = nameKey(person.name)
  const alike = (await namesInUse(tx))
    .filter(other => nameKey(other.name) === key && likelySame(person, other))
    .map(({ id }) => id)
  const rows = await tx.customer.findMany({
    where: { id: { in: alike.slice(0, 500) } },
    include: { vehicles: { where: { archivedAt: null }, select: { plate: true } } },
  })
  const lines = rows.map(({ name, phone, email, vehicles }) =>
    [name, phone && showPhone(phone, country), email, ...vehicles.map(({ plate }) => plate)]
      .filter(Boolean)
      .join(', '),
  )
  askFirst('known-already', lines, {
    field: 'name',
    lead: say('Somebody like this is on file already. Add them a second time?'),
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
        listed(say('They have a car booked or in the shop; cancel that or hand it over first:'), lines),
      )
    await archiveRow(audit, kept(tx), input, { at })
  })
}

/** Takes an archived customer back. */
export function restoreCustomer(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, (tx, audit) => restoreRow(audit, kept(tx), input))
}
