/** What the day plan is asked and told. */

import { z } from 'zod'
import { word } from '../../domain/language/index.ts'
import { id, minute, oneRow, sizeClass } from '../desk/inputs.ts'

/** How far ahead the floor is laid: further than a month nothing that is booked stays as it is for long. */
export const mostDays = 31

export const relayInput = z.object({
  /** Cars that come within so many days are laid anew. */
  days: z
    .int(word('Give a number of days.'))
    .min(1, word('Give at least one day.'))
    .max(mostDays, word('Give a month at most.')),
})
export type RelayInput = z.infer<typeof relayInput>

export const acceptInput = z.object({
  /** The run the proposal came from. */
  runId: id,
  jobIds: z.array(id).min(1, word('Choose at least one car.')).max(200),
})
export type AcceptInput = z.infer<typeof acceptInput>

export const pinInput = oneRow.extend({ pinned: z.boolean() })
export type PinInput = z.infer<typeof pinInput>

const forATime = { fromAt: minute, toAt: minute }

/** Something that has not happened, and how far ahead the floor is laid with it. */
export const whatIfInput = relayInput.extend({
  what: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('bayClosed'), bayId: id, ...forATime }),
    z.object({ kind: z.literal('away'), crewId: id, ...forATime }),
    z.object({
      kind: z.literal('cureLonger'),
      jobId: id,
      moreMin: z
        .int(word('Give a duration, such as 4 h.'))
        .min(1, word('Give at least a minute.'))
        .max(20_160, word('Give two weeks at most.')),
    }),
    z.object({
      kind: z.literal('rush'),
      treatmentIds: z.array(id).min(1, word('Choose at least one treatment.')).max(20),
      sizeClass,
      /** It may come from then on, and is wanted home by then. */
      fromAt: minute,
      toAt: minute,
    }),
  ]),
})
export type WhatIfInput = z.infer<typeof whatIfInput>

export const keepInput = z.object({ runId: id })
export type KeepInput = z.infer<typeof keepInput>

export const useInput = z.object({
  /** The present week and those before it: half a year shows a season, and more is no trend any more. */
  weeks: z
    .int(word('Give a number of weeks.'))
    .min(1, word('Give at least one week.'))
    .max(26, word('Give half a year at most.')),
})
export type UseInput = z.infer<typeof useInput>
