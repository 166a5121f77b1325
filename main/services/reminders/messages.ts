/** Messages as the screens are given them, and the batch of the morning. */

import { dateOf, startOfDay } from '../../domain/calendar/index.ts'
import { say, writtenIn } from '../../domain/language/index.ts'
import { found } from '../../domain/refusal.ts'
import {
  type Channel,
  CRASH_RISK_WORDS,
  type Failure,
  LAW_NOTE,
  type MessageState,
  type Outcome,
} from '../../domain/upkeep/index.ts'
import type { Message } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { noSenderWords, senderOf } from '../desk/mailSettings.ts'
import { shopOf } from '../desk/shopView.ts'
import { vehicleWords } from '../floor/jobRows.ts'
import { slotsOf } from '../upkeep/messageRows.ts'
import { failedPlans } from '../upkeep/planDue.ts'
import { upkeepRules } from '../upkeep/settings.ts'
import { upkeepDay } from '../upkeep/visits.ts'
import { stoppedWords } from './outboxRun.ts'
import { batchStands } from './prepare.ts'
import { templatesOf } from './templates.ts'
import { dueForReminder, mostNotWanted, notWantedViews } from './wanted.ts'

export type MessageView = Awaited<ReturnType<typeof messageViews>>[number]

/** Messages with everything a screen says of them. */
export async function messageViews(tx: Tx, nowAt: number, rows: readonly Message[]) {
  const { zone } = await shopOf(tx)
  const [about, jobs, templates] = await Promise.all([
    tx.message.findMany({
      where: { id: { in: rows.map(row => row.id) } },
      select: {
        id: true,
        customer: { select: { name: true } },
        vehicle: true,
        plan: { select: { title: true } },
      },
    }),
    tx.job.findMany({
      where: { id: { in: rows.flatMap(row => slotsOf(row).map(slot => slot.jobId)) } },
      select: { id: true, status: true, heldUntilAt: true },
    }),
    templatesOf(tx),
  ])
  const byId = <T extends { id: string }>(list: readonly T[]) => new Map(list.map(each => [each.id, each]))
  const [known, held, names] = [byId(about), byId(jobs), byId(templates)]
  return rows.flatMap(row => {
    const its = known.get(row.id)
    if (!its) return []
    const {
      mailId: _,
      stopAsked: __,
      startedAt: ___,
      approvedBy: ____,
      withdrawnBecause,
      waiting,
      ...message
    } = row
    const failure = row.failure as Failure | null
    return {
      ...message,
      state: row.state as MessageState,
      channel: row.channel as Channel,
      customerName: its.customer.name,
      plate: its.vehicle.plate,
      vehicleWords: vehicleWords(its.vehicle),
      title: its.plan.title,
      dueOn: row.ruleOn,
      templateName: names.get(row.templateId)?.name ?? row.templateId,
      unfilled: row.unfilled as string[],
      /** `words` in the owner's language. */
      slots: slotsOf(row).map(slot => {
        const job = held.get(slot.jobId)
        return { ...slot, words: momentIn(row.language, zone, slot.dropOffAt), state: slotState(job, nowAt) }
      }),
      /** Why it waits or did not go out. */
      words: withdrawnBecause ?? failure?.text ?? waiting,
      failure,
      outcome: row.outcome as Outcome | null,
    }
  })
}

/** held: good; gone: lapsed, released or booked by another; taken: the owner's booking. */
function slotState(job: { status: string; heldUntilAt: number | null } | undefined, nowAt: number) {
  if (job && ['booked', 'inShop', 'handedOver'].includes(job.status)) return 'taken'
  return job?.status === 'held' && (job.heldUntilAt ?? 0) > nowAt ? 'held' : 'gone'
}

/** A moment in a language: "Monday, 4 May at 09:00". */
function momentIn(language: string, zone: string, at: number): string {
  const { locale, hourCycle } = writtenIn(language)
  return Temporal.Instant.fromEpochMilliseconds(at * 60_000)
    .toLocaleString(locale, {
      hourCycle,
      timeZone: zone,
      weekday: 'long',
      day: 'numeric',
      month: 'long',
      hour: 'numeric',
      minute: '2-digit',
    })
    .replaceAll('\u202f', ' ')
}

/** One message. */
export async function messageView(tx: Tx, nowAt: number, id: string): Promise<MessageView> {
  const row = await tx.message.findUniqueOrThrow({ where: { id } })
  const [view] = await messageViews(tx, nowAt, [row])
  return found(view, { id }, say('This message is not there; look at the batch again.'))
}

/** What waits for the desk comes first. */
const stateOrder: readonly MessageState[] = ['draft', 'failed', 'approved', 'sending', 'sent', 'withdrawn']

/** As many messages as anybody reviews before looking again; the others come as these are done. */
const mostShown = 200

export type BatchView = Awaited<ReturnType<typeof batch>>

/** What waits for the desk, what is under way and what went out today; and what was not written, and why. */
export async function batch(desk: Desk) {
  const tx = desk.store.read
  const nowAt = desk.now()
  const { zone } = await shopOf(tx)
  const today = dateOf(nowAt, zone)
  const rules = await upkeepRules(tx)
  const midnight = startOfDay(today, zone)
  const { rows, more } = await batchRows(tx, midnight)
  const { wanted, notWanted, behind } = await dueForReminder(desk)
  const sender = await senderOf(tx, desk.store)
  const waits = (state: string, channel?: string) =>
    tx.message.count({ where: { state, ...(channel && { channel }) } })
  return {
    today,
    messages: await messageViews(tx, nowAt, rows),
    /** Whether there are more than these. */
    more,
    /** How many there are, shown or not. */
    drafts: await waits('draft'),
    readyMails: await waits('approved', 'email'),
    /** Visits a reminder is due for and not written yet: `reminders.prepare` writes them. */
    waiting: wanted.length,
    /** How many plans are still as they were worked out before what changed since. */
    behind,
    /** How far the writing is, and what came of the last. */
    writing: batchStands(desk),
    notWritten: await notWantedViews(tx, notWanted.slice(0, mostNotWanted)),
    /** How many there are of these, shown or not. */
    notWrittenCount: notWanted.length,
    failed: await failedPlans(tx, await upkeepDay(tx, nowAt)),
    sentToday: await tx.message.count({ where: { sentAt: { gte: midnight }, channel: { not: 'letter' } } }),
    dailyLimit: rules.dailyLimit,
    automatic: rules.automatic,
    /** Why nothing can go out as things stand (no mail server entered, a wrong password); null: it can. */
    stopped: sender ? stoppedWords(desk.store) : say(noSenderWords),
    /** Which of the two risks is taken after an interruption, and how many may have arrived twice. */
    riskWords: say(CRASH_RISK_WORDS[rules.crashRisk]),
    possiblyTwice: await tx.message.count({ where: { unanswered: { gt: 0 } } }),
    lawNote: say(LAW_NOTE),
  }
}

/** The first of them in the order of their states, then as written; and whether there are more. */
async function batchRows(tx: Tx, midnight: number): Promise<{ rows: Message[]; more: boolean }> {
  const rows: Message[] = []
  for (const state of stateOrder) {
    const today =
      state === 'sent'
        ? { sentAt: { gte: midnight } }
        : state === 'withdrawn'
          ? { createdAt: { gte: midnight } }
          : {}
    rows.push(
      ...(await tx.message.findMany({
        where: { state, ...today },
        orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
        take: mostShown + 1 - rows.length,
      })),
    )
  }
  return { rows: rows.slice(0, mostShown), more: rows.length > mostShown }
}
