import { z } from 'zod'
import { conditions } from '../domain/shop/index.ts'
import { confirmPlace, holdPlace, releasePlace } from '../services/booking/booking.ts'
import { offers } from '../services/booking/offers.ts'
import { date, finish, id, minute, sizeClass, version } from '../services/desk/inputs.ts'
import { procedure, router } from './trpc.ts'

const treatmentIds = z.array(id).min(1, 'Choose at least one treatment.').max(20)
const condition = z.enum(conditions)

const plan = z.object({
  steps: z
    .array(
      z.object({
        bayId: id,
        startAt: minute,
        endAt: minute,
        crewIds: z.array(id).max(20),
        moved: z.object({ bayId: id, at: minute }).nullable(),
      }),
    )
    .min(1)
    .max(200),
  handoverAt: minute,
})

const place = z.object({ jobId: id, version })

export const booking = router({
  offers: procedure
    .input(
      z.object({
        sizeClass,
        condition,
        finish: finish.optional(),
        treatmentIds,
        askedDate: date.optional(),
      }),
    )
    .query(({ ctx, input }) => offers(ctx, input)),

  hold: procedure
    .input(
      z.object({
        vehicleId: id,
        condition,
        treatmentIds,
        askedDate: date.optional(),
        plan,
        holdMin: z
          .int()
          .min(1, 'Hold it for at least a minute.')
          .max(7 * 1440, 'Hold it for a week at most.')
          .optional(),
      }),
    )
    .mutation(({ ctx, input }) => holdPlace(ctx, input)),

  confirm: procedure.input(place).mutation(({ ctx, input }) => confirmPlace(ctx, input)),
  release: procedure.input(place).mutation(({ ctx, input }) => releasePlace(ctx, input)),
})
