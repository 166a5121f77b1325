import { z } from 'zod'
import { date, id, language, number, oneRow, text, versionOrNone } from '../services/desk/inputs.ts'
import { clearBounce, importBounce } from '../services/reminders/bounces.ts'
import { callList, letterList } from '../services/reminders/deskLists.ts'
import {
  approveAll,
  approveMessage,
  editMessage,
  refuseMessage,
  retryMessage,
  sendTest,
  sentByHand,
} from '../services/reminders/messageActs.ts'
import { batch } from '../services/reminders/messages.ts'
import { runOutbox } from '../services/reminders/outboxRun.ts'
import { bookSlot, recordOutcome } from '../services/reminders/outcomes.ts'
import { prepareBatch, writeOne } from '../services/reminders/prepare.ts'
import { channel, planKind, visit, why } from '../services/upkeep/inputs.ts'
import { getUpkeepSettings, saveUpkeepSettings } from '../services/upkeep/settings.ts'
import { procedure, router } from './trpc.ts'

const figure = number('Give a number.')

const settings = z.object({
  version: versionOrNone,
  level: figure,
  fromMin: figure,
  toMin: figure,
  closedWeekdays: z.array(figure).max(7),
  closedDates: z.array(date).max(400),
  closedWithShop: z.boolean(),
  dailyLimit: figure,
  maxTries: figure,
  gapDays: figure,
  againDays: figure,
  laterDays: figure,
  leadDays: figure,
  holdDays: figure,
  automatic: z.boolean(),
  crashRisk: z.enum(['again', 'ask']),
  language,
  stopAddress: text,
  treatments: z.partialRecord(planKind, id.nullable()),
  roomShare: figure,
  checkUpDays: figure,
  factors: z
    .array(
      z.object({
        id: z.string().min(1).max(60),
        label: z.string().min(1).max(120),
        mark: z.enum(['rule of thumb', 'set by the shop']),
        choices: z
          .array(
            z.object({
              id: z.string().min(1).max(60),
              label: z.string().min(1).max(120),
              multiplier: figure,
            }),
          )
          .max(20),
      }),
    )
    .max(20),
})

export const reminders = router({
  /** What waits for the desk, what is under way, what went out today. */
  batch: procedure.query(({ ctx }) => batch(ctx)),
  /** Writes the drafts that are due, each with two times held. */
  prepare: procedure.mutation(({ ctx }) => prepareBatch(ctx)),
  /** Writes one visit's reminder, whatever the morning would do. */
  write: procedure
    .input(visit.extend({ channel, templateId: id.optional() }))
    .mutation(({ ctx, input }) => writeOne(ctx, input)),

  approve: procedure.input(oneRow).mutation(({ ctx, input }) => approveMessage(ctx, input)),
  /** All drafts, or those named. */
  approveAll: procedure
    .input(z.object({ ids: z.array(id).max(1_000).optional() }).optional())
    .mutation(({ ctx, input }) => approveAll(ctx, input)),
  edit: procedure
    .input(oneRow.extend({ subject: text, body: z.string().max(20_000) }))
    .mutation(({ ctx, input }) => editMessage(ctx, input)),
  refuse: procedure.input(oneRow.extend({ why })).mutation(({ ctx, input }) => refuseMessage(ctx, input)),
  /** The same as refusing, for what was approved already. */
  withdraw: procedure.input(oneRow.extend({ why })).mutation(({ ctx, input }) => refuseMessage(ctx, input)),
  retry: procedure.input(oneRow).mutation(({ ctx, input }) => retryMessage(ctx, input)),
  /** Sends the approved e-mails that may go out now, without waiting for the next minute. */
  send: procedure.mutation(({ ctx }) => runOutbox(ctx)),
  /** To the shop's own address; nothing about the message changes. */
  sendTest: procedure.input(z.object({ id })).mutation(({ ctx, input }) => sendTest(ctx, input)),

  /** Calls and texts that may be made now. */
  callList: procedure.query(({ ctx }) => callList(ctx)),
  /** Letters to print: /documents/letter/<id>.pdf */
  letters: procedure.query(({ ctx }) => letterList(ctx)),
  /** A letter was posted, a text sent from the desk's phone. */
  sentByHand: procedure.input(oneRow).mutation(({ ctx, input }) => sentByHand(ctx, input)),

  outcome: procedure
    .input(
      z.object({
        messageId: id,
        outcome: z.enum(['booked', 'later', 'no', 'unreachable', 'sold']),
        laterOn: date.optional(),
      }),
    )
    .mutation(({ ctx, input }) => recordOutcome(ctx, input)),
  /** The owner takes one of the times proposed, counted from 0. */
  book: procedure
    .input(z.object({ messageId: id, slot: z.int().min(0).max(9) }))
    .mutation(({ ctx, input }) => bookSlot(ctx, input)),

  bounce: procedure
    .input(z.object({ text: z.string().min(1).max(500_000) }))
    .mutation(({ ctx, input }) => importBounce(ctx, input)),
  clearBounce: procedure
    .input(z.object({ address: text }))
    .mutation(({ ctx, input }) => clearBounce(ctx, input)),

  settings: procedure.query(({ ctx }) => getUpkeepSettings(ctx)),
  saveSettings: procedure.input(settings).mutation(({ ctx, input }) => saveUpkeepSettings(ctx, input)),
})
