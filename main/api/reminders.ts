import { z } from 'zod'
import { id, oneRow, text } from '../services/desk/inputs.ts'
import { clearBounce, importBounce } from '../services/reminders/bounces.ts'
import { callList, letterList } from '../services/reminders/deskLists.ts'
import {
  approveInput,
  bookInput,
  outcomeInput,
  refuseInput,
  wordsInput,
  writeInput,
} from '../services/reminders/inputs.ts'
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
import { beginBatch, stopBatch, writeOne } from '../services/reminders/prepare.ts'
import { upkeepSettings } from '../services/upkeep/inputs.ts'
import { getUpkeepSettings, saveUpkeepSettings } from '../services/upkeep/settings.ts'
import { procedure, router } from './trpc.ts'

export const reminders = router({
  /** What waits for the desk, what is under way, what went out today. */
  batch: procedure.query(({ ctx }) => batch(ctx)),
  /** Begins to write the drafts that are due, each with two times held, and answers at once: the batch tells how far it is. */
  prepare: procedure.mutation(({ ctx }) => beginBatch(ctx)),
  stopPreparing: procedure.mutation(({ ctx }) => stopBatch(ctx)),
  /** Writes one visit's reminder, whatever the morning would do. */
  write: procedure.input(writeInput).mutation(({ ctx, input }) => writeOne(ctx, input)),

  approve: procedure.input(oneRow).mutation(({ ctx, input }) => approveMessage(ctx, input)),
  /** All drafts, or those named. */
  approveAll: procedure.input(approveInput).mutation(({ ctx, input }) => approveAll(ctx, input)),
  edit: procedure.input(wordsInput).mutation(({ ctx, input }) => editMessage(ctx, input)),
  refuse: procedure.input(refuseInput).mutation(({ ctx, input }) => refuseMessage(ctx, input)),
  /** The same as refusing, for what was approved already. */
  withdraw: procedure.input(refuseInput).mutation(({ ctx, input }) => refuseMessage(ctx, input)),
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

  outcome: procedure.input(outcomeInput).mutation(({ ctx, input }) => recordOutcome(ctx, input)),
  /** The owner takes one of the times proposed, counted from 0. */
  book: procedure.input(bookInput).mutation(({ ctx, input }) => bookSlot(ctx, input)),

  bounce: procedure
    .input(z.object({ text: z.string().min(1).max(500_000) }))
    .mutation(({ ctx, input }) => importBounce(ctx, input)),
  clearBounce: procedure
    .input(z.object({ address: text }))
    .mutation(({ ctx, input }) => clearBounce(ctx, input)),

  settings: procedure.query(({ ctx }) => getUpkeepSettings(ctx)),
  saveSettings: procedure.input(upkeepSettings).mutation(({ ctx, input }) => saveUpkeepSettings(ctx, input)),
})
