/**
 * Shapes of input that several rooms share. A room keeps its own in `<room>/inputs.ts`: the schema is the one
 * declaration, the router checks with it, and the service takes `z.infer` of it. Every text, list, number and date has
 * a limit, in words; a test walks the whole surface for one that has none. A limit here keeps a computation bounded;
 * what is sensible within it is for the domain to say.
 */

import { z } from 'zod'
import { inShopYears } from '../../domain/calendar/index.ts'
import { localeNow, say, word } from '../../domain/language/index.ts'
import { capabilities, finishes, sizeClasses, skills } from '../../domain/shop/index.ts'

/** A row's id. */
export const id = z.string().min(1).max(64)

/** The edit count a window saw; another window's save has moved it on. */
export const version = z.int().min(1).max(2_147_483_647)

/** 0: nothing has been saved yet. */
export const versionOrNone = z.int().min(0).max(2_147_483_647)

/** A row that is numbered instead: a line of the ledger, a reading. */
export const rowNumber = z.int().min(0).max(1_000_000_000_000)

/** What an edit or a new row brings: both or neither. */
export const edited = { id: id.optional(), version: version.optional() }

export const oneRow = z.object({ id, version })

/** A day of the calendar in the years a shop has to do with; a walk through days is bounded by it. */
export const date = z
  .string(word('Give a date as 2026-04-15.'))
  .max(40, word('Give a date as 2026-04-15.'))
  .superRefine((given, context) => {
    const refuse = (message: string) => context.addIssue({ code: 'custom', message })
    if (!/^\d{4}-\d{2}-\d{2}$/.test(given))
      refuse(say('"{given}" is no date: give it as 2026-04-15.', { given }))
    else if (!z.iso.date().safeParse(given).success) refuse(say('{given} is not in the calendar.', { given }))
    else if (!inShopYears(given))
      refuse(say('{given} is out of range: give a year from 1950 to 2100.', { given }))
  })

/** An epoch minute in the same years. */
export const minute = z
  .int(word('Give a moment.'))
  .min(-10_519_200, word('That is before 1950.'))
  .max(68_899_680, word('That is after 2100.'))

export const text = z.string().max(4_000, word('That is too long: 4,000 characters at most.'))

/** A language a letter is written in. */
export const language = z
  .string()
  .max(20)
  .regex(/^[a-z]{2,3}(-[A-Z][a-z]{3})?(-([A-Z]{2}|\d{3}))?$/, word('Give a language, such as en or de.'))

/** A number of anything, with these words where it is none; `most` in either direction. */
export const number = (words: string, most = 1_000_000) =>
  z.number(words).min(-most, outOf(most)).max(most, outOf(most))

/** The same without a fraction. */
export const whole = (words: string, most = 1_000_000) =>
  z.int(words).min(-most, outOf(most)).max(most, outOf(most))

const outOf = (most: number) => ({
  error: () =>
    say('Give a number from {least} to {most}.', {
      least: (-most).toLocaleString(localeNow()),
      most: most.toLocaleString(localeNow()),
    }),
})

/** A step's place in its job. */
export const position = z.int().min(0).max(200)

const wallMinute = z.int(word('Give a time of day, such as 08:00.')).min(0).max(1440)

export const wallSpan = z.object({ from: wallMinute, to: wallMinute })

export const weekly = z.array(wallSpan.extend({ weekday: z.int().min(1).max(7) })).max(70)

export const capability = z.enum(capabilities)
export const skill = z.enum(skills)
export const sizeClass = z.enum(sizeClasses)
export const finish = z.enum(finishes)

/** The person has been told which bookings this touches and goes on. */
export const accepted = z.boolean().optional()

/** A row to put away or take out, which may have to be asked about. */
export const rowAccepted = oneRow.extend({ accepted })
export type RowAccepted = z.infer<typeof rowAccepted>

export const listInput = z.object({ archived: z.boolean().optional() }).optional()
export type ListInput = z.infer<typeof listInput>

export const orderInput = z.object({ ids: z.array(id).max(500) })

/** How mail leaves the shop. */
export const mailInput = z.object({
  host: text,
  port: whole(word('Give the port, such as 587.')),
  security: z.enum(['tls', 'starttls', 'none']),
  user: text.nullable(),
  /** Left out: as it is; null: forget it. */
  password: z.string().max(500).nullable().optional(),
  fromName: text,
  fromAddress: text,
  /** Left out where nothing has been entered yet. */
  version: version.optional(),
})
export type MailInput = z.infer<typeof mailInput>
