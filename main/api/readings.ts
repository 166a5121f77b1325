import { z } from 'zod'
import { importReadings, previewImport } from '../services/cure/importReadings.ts'
import {
  addReading,
  conditionsNow,
  listReadings,
  setBayUsual,
  voidReading,
} from '../services/cure/readings.ts'
import { id, minute, rowNumber, versionOrNone } from '../services/desk/inputs.ts'
import { procedure, router } from './trpc.ts'

/** What a logger's file may be at once, in bytes: more than any other procedure takes. */
export const importMaxBytes = 12 * 1024 * 1024

const degrees = z.number('Give a temperature, such as 18.5.').min(-1_000).max(1_000)
const percent = z.number('Give a relative humidity, such as 45.').min(-1_000).max(1_000)
/** A logger's file; a hundred thousand rows and more fit. */
const fileText = z.string().min(1, 'The file is empty.').max(importMaxBytes)
const column = z.string().max(500)

export const readings = router({
  /** How each bay stands now, with its usual temperature and its sensors. */
  now: procedure.query(({ ctx }) => conditionsNow(ctx)),
  list: procedure
    .input(z.object({ bayId: id, fromAt: minute, toAt: minute }))
    .query(({ ctx, input }) => listReadings(ctx, input)),
  add: procedure
    .input(
      z.object({
        bayId: id,
        at: minute,
        airC: degrees,
        panelC: degrees.nullable(),
        humidityPercent: percent.nullable(),
      }),
    )
    .mutation(({ ctx, input }) => addReading(ctx, input)),
  void: procedure.input(z.object({ id: rowNumber })).mutation(({ ctx, input }) => voidReading(ctx, input)),
  bayUsual: procedure
    .input(z.object({ bayId: id, version: versionOrNone, celsius: degrees.nullable() }))
    .mutation(({ ctx, input }) => setBayUsual(ctx, input)),

  /** A mutation only in form, since a file does not fit in an address: it saves nothing. */
  preview: procedure
    .input(z.object({ text: fileText }))
    .mutation(({ ctx, input }) => previewImport(ctx, input)),
  import: procedure
    .input(
      z.object({
        bayId: id,
        text: fileText,
        mapping: z.object({
          time: column,
          air: column,
          panel: column.nullable(),
          humidity: column.nullable(),
          dewPoint: column.nullable(),
        }),
        dateOrder: z.enum(['ymd', 'mdy', 'dmy']),
        unit: z.enum(['C', 'F']),
      }),
    )
    .mutation(({ ctx, input }) => importReadings(ctx, input)),
})
