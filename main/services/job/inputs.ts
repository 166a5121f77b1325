/** What the acts on a job are sent. */

import { z } from 'zod'
import { toldKinds } from '../../domain/job/index.ts'
import { word } from '../../domain/language/index.ts'
import { lentKinds } from '../../domain/shop/index.ts'
import { accepted, id, minute, number, oneRow, position, text, version, whole } from '../desk/inputs.ts'
import { draws } from '../shelf/inputs.ts'

export const oneJob = z.object({ id })
export const oneJobSeen = oneRow

export const jobSearch = z.object({ text: z.string().max(200) })

/** An act that happened at a minute; now unless said otherwise. */
export const timedAct = oneRow.extend({ at: minute.optional() })
export type TimedAct = z.infer<typeof timedAct>

const stepAct = timedAct.extend({ position })

/** With the reason, where a coat is begun outside what its profile asks; `accepted`: its bay or its people are taken. */
export const startStepInput = stepAct.extend({ reason: text.optional(), accepted })
export type StartStepInput = z.infer<typeof startStepInput>

/** From one person to another; `accepted`: that they are away or with another car was seen. */
export const giveStepInput = stepAct.extend({ fromId: id, toId: id, accepted })
export type GiveStepInput = z.infer<typeof giveStepInput>

/** With what it drew, where the crew says so at once; else that waits for the close of day. */
export const finishStepInput = stepAct.extend({
  draws: draws.optional(),
  /** It drew what its recipe says. */
  asPlanned: z.boolean().optional(),
})
export type FinishStepInput = z.infer<typeof finishStepInput>

/** What somebody wants kept with the job, and who said it: "Owner asks for a call on Thursday". */
export const noteInput = z.object({ id, words: text.min(1, word('Write what is to be kept.')) })
export type NoteInput = z.infer<typeof noteInput>

/** Without a reason the work that a missed wait costs is added; with one it is not, and the reason is kept. */
export const missedInput = oneRow.extend({ position, reason: text.optional() })
export type MissedInput = z.infer<typeof missedInput>

/** A step takes longer, or less, than it was booked for; with what is asked for that. */
export const stepMinutesInput = oneRow.extend({
  position,
  minutes: whole(word('Give the minutes it takes.'), 10_080),
  /** What is charged for it on top; 0: nothing. */
  chargeMinor: whole(word('Give the price.'), 1_000_000_000),
})
export type StepMinutesInput = z.infer<typeof stepMinutesInput>

const gloss = number(word('Give the gloss, such as 88.'), 2_000).nullable()

/** What a test spot showed; what was not measured is null. */
export const spotInput = oneRow.extend({
  combination: text.min(1, word('Say what worked: product, pad, passes.')),
  perPanelMin: whole(word('Give the minutes one panel takes.'), 1_440),
  lostUm: number(word('Give the micrometres, such as 2.5.'), 1_000).nullable(),
  glossBefore: gloss,
  glossAfter: gloss,
})
export type SpotInput = z.infer<typeof spotInput>

/** What the customer said to it, who, and how; the price is that of the whole job. */
export const spotAnswerInput = oneRow.extend({
  answer: z.enum(['agreed', 'declined']),
  by: text,
  how: z.enum(['in person', 'phone', 'message']),
  priceMinor: whole(word('Give the price.'), 1_000_000_000),
})
export type SpotAnswerInput = z.infer<typeof spotAnswerInput>

export const takeBackInput = oneRow.extend({ position: position.optional() })
export type TakeBackInput = z.infer<typeof takeBackInput>

export const handOverInput = timedAct.extend({ reason: text.optional() })
export type HandOverInput = z.infer<typeof handOverInput>

export const promiseInput = oneRow.extend({ promisedAt: minute })
export type PromiseInput = z.infer<typeof promiseInput>

/** Who has confirmed covered transport and storage; null: nobody any more. */
export const coverInput = oneRow.extend({ by: text.nullable() })
export type CoverInput = z.infer<typeof coverInput>

export const outsideInput = oneRow.extend({ outsideC: number(word('Give a temperature.')).nullable() })
export type OutsideInput = z.infer<typeof outsideInput>

/** Who has looked; null: the tick is taken back. */
export const tickInput = oneRow.extend({ checkId: id, by: text.nullable() })
export type TickInput = z.infer<typeof tickInput>

/** One thing of a kind lent with the job, or taken back. */
export const lendInput = oneRow.extend({ kind: z.enum(lentKinds), on: z.boolean() })
export type LendInput = z.infer<typeof lendInput>

export const cancelInput = oneRow.extend({ reason: text })
export type CancelInput = z.infer<typeof cancelInput>

/** A lamp or a heated bay; every coated panel was kept at `panelC` or hotter. */
export const heatingInput = z.object({
  jobId: id,
  version,
  fromAt: minute,
  toAt: minute,
  panelC: number(word('Give a temperature, such as 60.')),
  note: text,
})
export type HeatingInput = z.infer<typeof heatingInput>

export const oneHeating = z.object({ jobId: id, version, id })

/** What a customer was told of their booking, word by word, and how. */
export const tellInput = z.object({
  id,
  kind: z.enum(toldKinds),
  channel: z.enum(['email', 'call']),
  text,
})
export type TellInput = z.infer<typeof tellInput>

/** Words about a booking that go out by e-mail. */
export const sendWordsInput = tellInput.omit({ channel: true }).extend({
  subject: text,
  /** The times that the draft names, as it was seen. */
  says: z.object({
    dropOffAt: minute.nullable(),
    promisedAt: minute.nullable(),
    readyAt: minute.nullable(),
  }),
})
export type SendWordsInput = z.infer<typeof sendWordsInput>
