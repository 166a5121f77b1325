/** What the desk does about a visit or a car; every act can be taken back. */

import { checkDate, dayWords } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { checkAbsences } from '../../domain/upkeep/index.ts'
import type { AuditEntry, Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { AwayInput, DoneInput, MoveInput, SkipInput, SoldInput, VisitKey } from './inputs.ts'
import { type KeptVisitPlan, keptPlans } from './kept.ts'
import { assertOnFile } from './onFile.ts'
import { stopMessages } from './stopMessages.ts'
import { type UpkeepDay, upkeepDay } from './visits.ts'
import { answeredOf, nextOf } from './workedOut.ts'

interface InAct {
  tx: Tx
  audit: (entry: AuditEntry) => void
  day: UpkeepDay
  actId: string
}

/** One line of an act; the stamp is the act's. */
export interface NewEntry {
  vehicleId: string
  planId?: string | null
  what: 'done' | 'skipped' | 'moved' | 'aimed' | 'booked' | 'rule' | 'away' | 'sold'
  ruleOn?: string | null
  onDay?: string | null
  toDay?: string | null
  rule?: string | null
  why?: string
  jobId?: string | null
}

/** What an act answers with, what was done in words; `upkeep.undo({ actId })` takes all of it back. */
export interface ActView {
  actId: string
  words: string
}

/** Does an act in one transaction: its lines, what else belongs to it, and an audit line. */
export function upkeepAct(
  desk: Desk,
  decide: (act: InAct) => Promise<{ entries: NewEntry[]; words: string }>,
): Promise<ActView> {
  return act(desk, async (tx, audit, at) => {
    const actId = crypto.randomUUID()
    const { entries, words } = await decide({ tx, audit, day: await upkeepDay(tx, at), actId })
    await writeEntries(tx, { actId, at, who: desk.who }, entries)
    const vehicleId = entries[0]?.vehicleId
    if (vehicleId !== undefined)
      audit({ act: 'upkeep', entity: 'vehicle', entityId: vehicleId, detail: { actId, words } })
    return { actId, words }
  })
}

export async function writeEntries(
  tx: Tx,
  stamp: { actId: string; at: number; who: string },
  entries: readonly NewEntry[],
): Promise<void> {
  await tx.upkeepEntry.createMany({ data: entries.map(entry => ({ ...entry, ...stamp })) })
}

/** The plan of a visit, with what stands about it. */
export async function planOfVisit(tx: Tx, planId: string): Promise<KeptVisitPlan> {
  const [kept] = await keptPlans(tx, { planIds: [planId] })
  if (!kept) refuse('missing', { planId }, say('This plan is not in use any more; look at the list again.'))
  return kept
}

/** The plan of the visit that is open now; refused where another one is by now. */
async function openVisit(tx: Tx, day: UpkeepDay, { planId, ruleOn }: VisitKey): Promise<KeptVisitPlan> {
  const kept = await planOfVisit(tx, planId)
  const next = nextOf(kept, day)
  if (next.dueOn === null || next.ruleOn !== ruleOn)
    refuse(
      'stale',
      { ruleOn },
      say(
        'This visit is not the open one any more: it was done, skipped or moved meanwhile. Look at the list again.',
      ),
    )
  return kept
}

/** This visit is left out; the next one comes in its time. */
export function skipVisit(desk: Desk, input: SkipInput): Promise<ActView> {
  return upkeepAct(desk, async ({ tx, day }) => {
    const { plan, row } = await openVisit(tx, day, input)
    const { planId, ruleOn } = input
    await stopMessages(tx, day.nowAt, { planId, ruleOn }, say('The visit was skipped.'))
    const why = checkNote(input.why ?? '', 'why', 200)
    return {
      entries: [{ vehicleId: row.vehicleId, planId: row.id, what: 'skipped', ruleOn: input.ruleOn, why }],
      words: say('{title} skipped', { title: plan.title }),
    }
  })
}

/** Another day was agreed for this visit. */
export function moveVisit(desk: Desk, input: MoveInput): Promise<ActView> {
  checkDate(input.to, 'to')
  return upkeepAct(desk, async ({ tx, day }) => {
    const { plan, row } = await openVisit(tx, day, input)
    if (input.to < day.today)
      refuse(
        'date-past',
        { to: input.to },
        say('{to} is over; give today or later.', { to: dayWords(input.to) }),
      )
    const why = checkNote(input.why ?? '', 'why', 200)
    const { ruleOn, to: toDay } = input
    return {
      entries: [{ vehicleId: row.vehicleId, planId: row.id, what: 'moved', ruleOn, toDay, why }],
      words: say('{title} moved to {to}', { title: plan.title, to: dayWords(input.to) }),
    }
  })
}

/** A visit was done, early or late; without `ruleOn` the plan says which one it answers, or that it is an extra one. */
export function doneVisit(desk: Desk, input: DoneInput): Promise<ActView> {
  if (input.on !== undefined) checkDate(input.on, 'on')
  return upkeepAct(desk, async ({ tx, day }) => {
    const kept =
      input.ruleOn === undefined
        ? await planOfVisit(tx, input.planId)
        : await openVisit(tx, day, { planId: input.planId, ruleOn: input.ruleOn })
    const { plan, row } = kept
    const onDay = input.on ?? day.today
    if (onDay > day.today)
      refuse(
        'to-come',
        { on: onDay },
        say('{onDay} is still to come; give the day it was done.', { onDay: dayWords(onDay) }),
      )
    const ruleOn = input.ruleOn ?? answeredOf(kept, onDay, day.zone)
    if (ruleOn !== null)
      await stopMessages(tx, day.nowAt, { planId: row.id, ruleOn }, say('The visit was done.'))
    return {
      entries: [{ vehicleId: row.vehicleId, planId: row.id, what: 'done', ruleOn, onDay }],
      words: say('{title} done on {onDay}', { title: plan.title, onDay: dayWords(onDay) }),
    }
  })
}

/** The car cannot come for a while, as over the winter: `to` is the first day back. */
export function carAway(desk: Desk, input: AwayInput): Promise<ActView> {
  const { vehicleId, from, to } = input
  checkAbsences([{ from, to }])
  return upkeepAct(desk, async ({ tx }) => {
    await assertOnFile(tx, vehicleId)
    const why = checkNote(input.why ?? '', 'why', 200)
    return {
      entries: [{ vehicleId, what: 'away', onDay: from, toDay: to, why }],
      words: say('away from {from}, back on {to}', { from: dayWords(from), to: dayWords(to) }),
    }
  })
}

/** The car was sold: nothing falls due for it, and nothing is written about it, from that day on. */
export function carSold(desk: Desk, input: SoldInput): Promise<ActView> {
  if (input.on !== undefined) checkDate(input.on, 'on')
  return upkeepAct(desk, async ({ tx, day }) => {
    await assertOnFile(tx, input.vehicleId)
    const onDay = input.on ?? day.today
    await stopMessages(tx, day.nowAt, { vehicleId: input.vehicleId }, say('The car was sold.'))
    return {
      entries: [{ vehicleId: input.vehicleId, what: 'sold', onDay }],
      words: say('sold on {onDay}', { onDay: dayWords(onDay) }),
    }
  })
}

/** Takes an act back as a whole; what was written to owners stays withdrawn. */
export function undoAct(desk: Desk, input: { actId: string }): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const lines = await tx.upkeepEntry.findMany({ where: { actId: input.actId, voidedAt: null } })
    const [first] = lines
    if (!first) refuse('missing', { actId: input.actId }, say('This was taken back already, or never done.'))
    if (lines.some(line => line.jobId !== null))
      refuse('by-a-job', { actId: input.actId }, say('This came from a job: change the job instead.'))
    await tx.upkeepEntry.updateMany({ where: { actId: input.actId, voidedAt: null }, data: { voidedAt: at } })
    audit({
      act: 'upkeep taken back',
      entity: 'vehicle',
      entityId: first.vehicleId,
      detail: { actId: input.actId, what: first.what, lines: lines.length },
    })
  })
}
