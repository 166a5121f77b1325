/** The list with who fits now, and what is asked and answered: whoever answers first has the place. */
import { dateOf, startOfDay } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import type { Condition, Scope } from '../../domain/shop/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { holdPlaceIn, markBooked, releasePlaceIn } from '../booking/booking.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import { speakingTo } from '../desk/speaking.ts'
import { nameOfCar } from '../floor/jobRows.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import { type Entry, endWaiting, mostWaiting, waitingEntries } from './entries.ts'
import { type Fit, fitsOn } from './fits.ts'
import { freedBy } from './freed.ts'
import type { AnswerInput, AskInput, FitsInput } from './inputs.ts'
import { goneWords, placeWords } from './words.ts'

export type WaitingView = Awaited<ReturnType<typeof waitingList>>

/** How long a place is held for somebody who was asked, in minutes: until they have heard and rung back. */
const heldForMin = 4 * 60

/** Everybody on the list, those who fit first and the best use of what came free leading. */
export async function waitingList(desk: Desk, { freedJobId }: FitsInput) {
  const tx = desk.store.read
  const nowAt = desk.now()
  const entries = await waitingEntries(tx)
  const floor = await floorOf(tx, nowAt, entries)
  const gaps = freedJobId === undefined ? [] : await freedBy(desk, tx, floor, freedJobId)
  const fits = await fitsOn(tx, floor, entries, { gaps })
  const names = await treatmentNames(tx, entries)
  const rank = ({ offer, usedMin }: Fit) => (offer.feasible ? usedMin + 1 : 0)
  const lines = [...fits].sort((a, b) => rank(b) - rank(a))
  return {
    nowAt,
    zone: floor.zone,
    today: dateOf(nowAt, floor.zone),
    entries: lines.map(({ entry, offer, usedMin, gapMin }) => ({
      id: entry.id,
      version: entry.version,
      customer: {
        id: entry.customerId,
        name: entry.customer.name,
        phone: entry.customer.phone,
        email: entry.customer.email,
      },
      carName: nameOfCar(entry.vehicle),
      treatments: fromJson<string[]>(entry.treatmentIds).map(id => names.get(id) ?? ''),
      fromOn: entry.fromOn,
      toOn: entry.toOn,
      weekdays: fromJson<number[]>(entry.weekdays),
      note: entry.note,
      createdAt: entry.createdAt,
      askedAt: entry.askedAt,
      held: isHeld(entry, nowAt)
        ? {
            jobId: entry.heldJob!.id,
            dropOffAt: entry.heldJob!.dropOffAt,
            promisedAt: entry.heldJob!.promisedAt,
            untilAt: entry.heldJob!.heldUntilAt!,
          }
        : null,
      /** Where they fit now; null: nowhere. */
      fits: offer.feasible ? { dropOffAt: offer.dropOff, handoverAt: offer.handover, usedMin, gapMin } : null,
    })),
    mostWaiting,
  }
}

/** What to write or say to one of them, in their language; null: there is no place to speak of. */
export async function waitingWords(desk: Desk, { id }: { id: string }): Promise<string | null> {
  const tx = desk.store.read
  const nowAt = desk.now()
  const entry = await entryOf(tx, { id })
  const fit = await fitNow(tx, nowAt, entry, [])
  const place = fit?.offer.feasible ? { dropOffAt: fit.offer.dropOff, handoverAt: fit.offer.handover } : null
  return messageFor(tx, entry, await floorOf(tx, nowAt, [entry]), place)
}

function floorOf(tx: Tx, nowAt: number, entries: readonly Entry[]) {
  const last = entries
    .map(entry => entry.toOn)
    .sort()
    .at(-1)
  return loadFloor(
    tx,
    nowAt,
    Math.max(nowAt, last === undefined ? nowAt : startOfDay(last, 'UTC') + 3 * 1440),
  )
}

async function treatmentNames(tx: Tx, entries: readonly Entry[]): Promise<Map<string, string>> {
  const ids = [...new Set(entries.flatMap(entry => fromJson<string[]>(entry.treatmentIds)))]
  const rows = await tx.treatment.findMany({ where: { id: { in: ids } }, select: { id: true, name: true } })
  return new Map(rows.map(row => [row.id, row.name]))
}

const isHeld = ({ heldJob }: Entry, nowAt: number) =>
  heldJob?.status === 'held' && (heldJob.heldUntilAt ?? 0) > nowAt

/** What to write or say: of the place held, of the one they would have, or nothing. */
function messageFor(
  tx: Tx,
  entry: Entry,
  floor: Awaited<ReturnType<typeof floorOf>>,
  place: { dropOffAt: number; handoverAt: number } | null,
) {
  const held = isHeld(entry, floor.nowAt)
    ? { dropOffAt: entry.heldJob!.dropOffAt, handoverAt: entry.heldJob!.promisedAt }
    : null
  const told = held ?? place
  return told === null ? null : speakingTo(tx, entry.customerId, async () => placeWords(floor, entry, told))
}

/** Offers somebody the place they fit: held for them, unless it is held for another who was asked before. */
export function askWaiting(desk: Desk, seen: AskInput): Promise<{ held: boolean }> {
  return act(desk, async (tx, audit, nowAt) => {
    const entry = await entryOf(tx, seen)
    const others = (await waitingEntries(tx)).filter(each => each.id !== entry.id && isHeld(each, nowAt))
    const jobId = (await holdFor(tx, audit, nowAt, entry, [])) ?? null
    if (
      jobId === null &&
      (await fitNow(
        tx,
        nowAt,
        entry,
        others.map(each => each.heldJobId!),
      )) === null
    )
      refuse(
        'no-place',
        { id: entry.id },
        say('There is no place any more on the days that suit; look at the list again.'),
      )
    await endWaiting(tx, seen, { askedAt: nowAt, ...(jobId !== null && { heldJobId: jobId }) })
    audit({ act: 'asked', entity: 'waiting', entityId: entry.id, detail: { vehicleId: entry.vehicleId } })
    return { held: jobId !== null }
  })
}

/**
 * What they said. Yes: the place is booked, also where it was held for another who has not answered; whoever loses it by
 * that, held for or only told of, is named, with words to tell them. No: what is held for them is let go, and they stay on the list.
 */
export function answerWaiting(
  desk: Desk,
  { answer, ...seen }: AnswerInput,
): Promise<{ jobId: string | null; lost: { customerName: string; phone: string | null; words: string }[] }> {
  return act(desk, async (tx, audit, nowAt) => {
    const entry = await entryOf(tx, seen)
    const own = isHeld(entry, nowAt) ? entry.heldJob : null
    if (answer === 'no') {
      if (own) await releasePlaceIn(tx, audit, { jobId: own.id, version: own.version })
      await endWaiting(tx, seen, { heldJobId: null })
      audit({ act: 'said no', entity: 'waiting', entityId: entry.id, detail: { vehicleId: entry.vehicleId } })
      return { jobId: null, lost: [] }
    }
    const lost: Entry[] = []
    const told = await toldOf(tx, nowAt, entry)
    let jobId = own?.id ?? (await holdFor(tx, audit, nowAt, entry, []))
    for (const other of jobId === null ? await waitingEntries(tx) : []) {
      if (jobId !== null || other.id === entry.id || !isHeld(other, nowAt)) continue
      const { id, version } = other.heldJob!
      if ((await fitNow(tx, nowAt, entry, [id])) === null) continue
      await releasePlaceIn(tx, audit, { jobId: id, version })
      await endWaiting(tx, other, { heldJobId: null })
      lost.push(other)
      jobId = await holdFor(tx, audit, nowAt, entry, [])
    }
    if (jobId === null)
      return refuse(
        'no-place',
        { id: entry.id },
        say('There is no place any more on the days that suit; look at the list again.'),
      )
    const held = await tx.job.findUniqueOrThrow({ where: { id: jobId } })
    await markBooked(tx, audit, { jobId, version: held.version, promisedAt: held.promisedAt })
    await endWaiting(tx, seen, { outcome: 'booked', endedAt: nowAt, heldJobId: jobId })
    for (const { entry: other, dropOffAt } of told) {
      const after = await fitNow(tx, nowAt, other, [])
      if (after?.offer.feasible && after.offer.dropOff === dropOffAt) continue
      await endWaiting(tx, other, { askedAt: null })
      lost.push(other)
    }
    audit({
      act: 'said yes',
      entity: 'waiting',
      entityId: entry.id,
      detail: { vehicleId: entry.vehicleId, jobId },
    })
    return {
      jobId,
      lost: await Promise.all(
        lost.map(async other => ({
          customerName: other.customer.name,
          phone: other.customer.phone,
          words: await speakingTo(tx, other.customerId, async () => goneWords(other)),
        })),
      ),
    }
  })
}

/** The others who were told of a place that is not held for them, and the one they would have. */
async function toldOf(tx: Tx, nowAt: number, { id }: Entry) {
  const entries = await waitingEntries(tx)
  const held = entries.filter(each => isHeld(each, nowAt)).map(each => each.heldJobId!)
  const told: { entry: Entry; dropOffAt: number }[] = []
  for (const entry of entries) {
    if (entry.id === id || entry.askedAt === null || isHeld(entry, nowAt)) continue
    const fit = await fitNow(tx, nowAt, entry, held)
    if (fit?.offer.feasible) told.push({ entry, dropOffAt: fit.offer.dropOff })
  }
  return told
}

async function entryOf(tx: Tx, { id }: { id: string }): Promise<Entry> {
  const entry = (await waitingEntries(tx)).find(each => each.id === id)
  return found(entry, { id }, say('Nobody waits here any more; look at the list again.'))
}

/** Where one fits with these holds let go; null: nowhere. */
async function fitNow(
  tx: Tx,
  nowAt: number,
  entry: Entry,
  exceptJobIds: readonly string[],
): Promise<Fit | null> {
  const floor = await floorOf(tx, nowAt, [entry])
  const [fit] = await fitsOn(tx, floor, [entry], { exceptJobIds })
  return fit?.offer.feasible ? fit : null
}

/** Holds the place they fit now, and gives its job; null where there is none. */
async function holdFor(
  tx: Tx,
  audit: Audit,
  nowAt: number,
  entry: Entry,
  exceptJobIds: readonly string[],
): Promise<string | null> {
  const fit = await fitNow(tx, nowAt, entry, exceptJobIds)
  if (!fit?.offer.feasible) return null
  const { jobId } = await holdPlaceIn(tx, audit, nowAt, {
    vehicleId: entry.vehicleId,
    treatmentIds: fromJson<string[]>(entry.treatmentIds),
    condition: entry.condition as Condition,
    scope: entry.scope as Scope,
    plan: fit.offer.plan,
    holdMin: heldForMin,
  })
  return jobId
}
