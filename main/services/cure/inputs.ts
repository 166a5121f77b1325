/** What the screen of the bays' conditions and the sensors send. */

import { z } from 'zod'
import { word } from '../../domain/language/index.ts'
import { id, minute, number, rowNumber, text, versionOrNone } from '../desk/inputs.ts'

/** What a logger's file may be at once, in bytes: more than any other procedure takes. */
export const importMaxBytes = 12 * 1024 * 1024

const degrees = z.number(word('Give a temperature, such as 18.5.')).min(-1_000).max(1_000)
const percent = z.number(word('Give a relative humidity, such as 45.')).min(-1_000).max(1_000)
const column = z.string().max(500)

export const readingsShown = z.object({ bayId: id, fromAt: minute, toAt: minute })

export const readingInput = z.object({
  bayId: id,
  at: minute,
  airC: degrees,
  panelC: degrees.nullable(),
  humidityPercent: percent.nullable(),
})
export type ReadingInput = z.infer<typeof readingInput>

export const oneReading = z.object({ id: rowNumber })

/** What the owner says a bay usually has; null leaves it to the last week's readings. */
export const usualInput = z.object({ bayId: id, version: versionOrNone, celsius: degrees.nullable() })
export type UsualInput = z.infer<typeof usualInput>

/** A logger's file; a hundred thousand rows and more fit. */
export const fileText = z.object({ text: z.string().min(1, word('The file is empty.')).max(importMaxBytes) })

export const importInput = fileText.extend({
  bayId: id,
  fileName: text.optional(),
  mapping: z.object({
    time: column,
    air: column,
    panel: column.nullable(),
    humidity: column.nullable(),
    dewPoint: column.nullable(),
  }),
  dateOrder: z.enum(['ymd', 'mdy', 'dmy']),
  /** Of values that do not name their own: never guessed. */
  unit: z.enum(['C', 'F'], word('Say whether the file is in °C or °F.')),
})
export type ImportInput = z.infer<typeof importInput>

export const oneImport = z.object({ id })

const value = z.union([number(word('Give a number.')), z.string().max(40)])
/** A sensor's post: at most some hours of a reading a minute. */
export const postedReadings = z.object({
  unit: z.enum(['C', 'F']).default('C'),
  readings: z
    .array(
      z.object({
        time: z.union([z.string().max(40), number(word('Give a number.'), 1e13)]).transform(String),
        air: value,
        panel: value.nullable().default(null),
        humidity: value.nullable().default(null),
        dewPoint: value.nullable().default(null),
      }),
    )
    .min(1)
    .max(500),
})
export type PostedReadings = z.infer<typeof postedReadings>
