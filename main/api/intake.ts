import { z } from 'zod'
import { id } from '../services/desk/inputs.ts'
import {
  afterInput,
  correctIntakeInput,
  decideInput,
  intakeInput,
  measuringInput,
  onePhoto,
  pasteInput,
  signIntakeInput,
} from '../services/intake/inputs.ts'
import {
  correctIntake,
  getIntake,
  pasteThickness,
  saveAfter,
  saveIntake,
  signIntake,
} from '../services/intake/intake.ts'
import { getMeasuring, saveMeasuring } from '../services/intake/measuring.ts'
import { listMeters } from '../services/intake/meters.ts'
import { removePhoto } from '../services/intake/photos.ts'
import { decidePaint } from '../services/job/decidePaint.ts'
import { procedure, router } from './trpc.ts'

export const intake = router({
  get: procedure.input(z.object({ jobId: id })).query(({ ctx, input }) => getIntake(ctx, input)),
  save: procedure.input(intakeInput).mutation(({ ctx, input }) => saveIntake(ctx, input)),
  sign: procedure.input(signIntakeInput).mutation(({ ctx, input }) => signIntake(ctx, input)),
  correct: procedure.input(correctIntakeInput).mutation(({ ctx, input }) => correctIntake(ctx, input)),
  saveAfter: procedure.input(afterInput).mutation(({ ctx, input }) => saveAfter(ctx, input)),
  /** Reads pasted thickness; saves nothing. */
  paste: procedure.input(pasteInput).mutation(({ input }) => pasteThickness(input)),
  measuring: procedure.query(({ ctx }) => getMeasuring(ctx)),
  meters: procedure.query(({ ctx }) => listMeters(ctx)),
  saveMeasuring: procedure.input(measuringInput).mutation(({ ctx, input }) => saveMeasuring(ctx, input)),
  decide: procedure.input(decideInput).mutation(({ ctx, input }) => decidePaint(ctx, input)),
  removePhoto: procedure.input(onePhoto).mutation(({ ctx, input }) => removePhoto(ctx, input)),
})
