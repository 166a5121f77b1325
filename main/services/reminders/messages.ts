/** Messages as the screens are given them, and the batch of the morning. */
import { dateOf, startOfDay } from '../../domain/calendar/index.ts'
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
import { upkeepRules } from '../upkeep/settings.ts'
import { stoppedWords } from './outboxRun.ts'
import { dueForReminder } from './prepare.ts'
import { templatesOf } from './templates.ts'
import type { BatchView, MessageView, SlotView } from './views.ts'

/** Messages with everything a screen says of them. */
export async function messageViews(tx: Tx, nowAt: number, rows: readonly Message[]): Promise<MessageView[]> {
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
    return {
      id: row.id,
      version: row.version,
      state: row.state as MessageState,
      channel: row.channel as Channel,
      address: row.address,
      tryNo: row.tryNo,
      customerId: row.customerId,
      customerName: its.customer.name,
      vehicleId: row.vehicleId,
      plate: its.vehicle.plate,
      vehicleWords: vehicleWords(its.vehicle),
      planId: row.planId,
      ruleOn: row.ruleOn,
      title: its.plan.title,
      dueOn: row.ruleOn,
      templateId: row.templateId,
      templateName: names.get(row.templateId)?.name ?? row.templateId,
      language: row.language,
      subject: row.subject,
      body: row.body,
      unfilled: row.unfilled as string[],
      slots: slotsOf(row).map(slot => {
        const job = held.get(slot.jobId)
        return { ...slot, words: momentIn(row.language, zone, slot.dropOffAt), state: slotState(job, nowAt) }
      }),
      attempts: row.attempts,
      notBeforeAt: row.notBeforeAt,
      words: row.withdrawnBecause ?? (row.failure as Failure | null)?.text ?? row.waiting,
      sentAt: row.sentAt,
      failure: row.failure as Failure | null,
      unanswered: row.unanswered,
      outcome: row.outcome as Outcome | null,
      outcomeAt: row.outcomeAt,
      nextTryOn: row.nextTryOn,
      createdAt: row.createdAt,
    }
  })
}

function slotState(
  job: { status: string; heldUntilAt: number | null } | undefined,
  nowAt: number,
): SlotView['state'] {
  if (job && ['booked', 'inShop', 'handedOver'].includes(job.status)) return 'taken'
  return job?.status === 'held' && (job.heldUntilAt ?? 0) > nowAt ? 'held' : 'gone'
}

/** A moment in a language: "Monday, 4 May at 09:00". */
function momentIn(language: string, zone: string, at: number): string {
  return Temporal.Instant.fromEpochMilliseconds(at * 60_000)
    .toLocaleString(language, {
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
  return found(view, { id }, 'This message is not there; look at the batch again.')
}

/** What waits for the desk comes first. */
const stateOrder: readonly MessageState[] = ['draft', 'failed', 'approved', 'sending', 'sent', 'withdrawn']

/** What waits for the desk, what is under way and what went out today; and what was not written, and why. */
export async function batch(desk: Desk): Promise<BatchView> {
  const tx = desk.store.read
  const nowAt = desk.now()
  const { zone } = await shopOf(tx)
  const rules = await upkeepRules(tx)
  const midnight = startOfDay(dateOf(nowAt, zone), zone)
  const rows = await tx.message.findMany({
    where: {
      OR: [
        { state: { in: ['draft', 'failed', 'approved', 'sending'] } },
        { sentAt: { gte: midnight } },
        { state: 'withdrawn', createdAt: { gte: midnight } },
      ],
    },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  const messages = await messageViews(tx, nowAt, rows)
  const { wanted, notWritten, failed } = await dueForReminder(desk)
  const sender = await senderOf(tx, desk.store)
  return {
    today: dateOf(nowAt, zone),
    messages: messages.sort((a, b) => stateOrder.indexOf(a.state) - stateOrder.indexOf(b.state)),
    waiting: wanted.length,
    notWritten,
    failed,
    sentToday: rows.filter(row => (row.sentAt ?? 0) >= midnight && row.channel !== 'letter').length,
    dailyLimit: rules.dailyLimit,
    automatic: rules.automatic,
    stopped: sender ? stoppedWords(desk.store) : noSenderWords,
    riskWords: CRASH_RISK_WORDS[rules.crashRisk],
    possiblyTwice: await tx.message.count({ where: { unanswered: { gt: 0 } } }),
    lawNote: LAW_NOTE,
  }
}
