import { importReadings, previewImport, takeBackImport } from '../services/cure/importReadings.ts'
import {
  fileText,
  importInput,
  oneImport,
  oneReading,
  readingInput,
  readingsShown,
  usualInput,
} from '../services/cure/inputs.ts'
import {
  addReading,
  conditionsNow,
  listReadings,
  setBayUsual,
  voidReading,
} from '../services/cure/readings.ts'
import { procedure, router } from './trpc.ts'

export const readings = router({
  /** How each bay stands now, with its usual temperature and its sensors. */
  now: procedure.query(({ ctx }) => conditionsNow(ctx)),
  list: procedure.input(readingsShown).query(({ ctx, input }) => listReadings(ctx, input)),
  add: procedure.input(readingInput).mutation(({ ctx, input }) => addReading(ctx, input)),
  void: procedure.input(oneReading).mutation(({ ctx, input }) => voidReading(ctx, input)),
  bayUsual: procedure.input(usualInput).mutation(({ ctx, input }) => setBayUsual(ctx, input)),

  /** A mutation only in form, since a file does not fit in an address: it saves nothing. */
  preview: procedure.input(fileText).mutation(({ ctx, input }) => previewImport(ctx, input)),
  import: procedure.input(importInput).mutation(({ ctx, input }) => importReadings(ctx, input)),
  takeBack: procedure.input(oneImport).mutation(({ ctx, input }) => takeBackImport(ctx, input)),
})
