/** What the booking acts are sent. */

import { z } from 'zod'
import { word } from '../../domain/language/index.ts'
import { conditions, lentKinds, scopes } from '../../domain/shop/index.ts'
import { date, finish, id, minute, sizeClass, text, version } from '../desk/inputs.ts'
import { amountMinor, pricing } from '../prices/inputs.ts'
import { callerInput } from '../records/inputs.ts'

const treatmentIds = z.array(id).min(1, word('Choose at least one treatment.')).max(20)
const condition = z.enum(conditions)
/** How much of the paint; the whole car unless said otherwise. */
const scope = z.enum(scopes).optional()
/** Who has confirmed that the car travels and stands under cover until it may get wet. */
const coveredBy = text.optional()

/** What the caller borrows meanwhile: one of each. */
const lends = z.array(z.enum(lentKinds)).max(lentKinds.length).optional()

export const offersInput = z.object({
  sizeClass,
  condition,
  /** Gloss unless said otherwise. */
  finish: finish.optional(),
  treatmentIds,
  scope,
  /** A car on file: what is noted of its panels counts. */
  vehicleId: id.optional(),
  askedDate: date.optional(),
  /** Brought on this day at the earliest. */
  notBefore: date.optional(),
  /** Home on this day at the latest. */
  homeBy: date.optional(),
  coveredBy,
  ...pricing,
  lends,
})
export type OffersInput = z.infer<typeof offersInput>

/** A plan as the scheduler makes it: an offer's comes back as it went out. */
export const plan = z.object({
  steps: z
    .array(
      z.object({
        bay: id,
        start: minute,
        end: minute,
        crew: z.array(id).max(20).readonly(),
        help: z.array(id).max(20).readonly().optional(),
        moved: z.object({ bay: id, at: minute }).optional(),
      }),
    )
    .min(1)
    .max(200)
    .readonly(),
  handover: minute,
})

/** A place for a car on file, or for a new one, which is written down in the same act. */
const place = z.object({
  condition,
  treatmentIds,
  scope,
  askedDate: date.optional(),
  coveredBy,
  lends,
  plan,
  /** How long to hold it, in minutes; half an hour unless said otherwise. */
  holdMin: z
    .int()
    .min(1, word('Hold it for at least a minute.'))
    .max(7 * 1440, word('Hold it for a week at most.'))
    .optional(),
  ...pricing,
  /** What is asked for as a deposit; as the shop's rules say unless given. */
  depositMinor: amountMinor.optional(),
})
export const holdInput = z.intersection(place, callerInput)
export type HoldInput = z.input<typeof holdInput>

/** Several cars for the same work: a place each, in this order. */
export const fleetInput = z.object({
  vehicleIds: z
    .array(id)
    .min(1, word('Choose at least one car.'))
    .max(12, word('Twelve cars at once at most: each place is searched with the earlier ones held.')),
  condition,
  treatmentIds,
  scope,
  /** Brought on this day at the earliest. */
  notBefore: date.optional(),
  coveredBy,
})
export type FleetInput = z.infer<typeof fleetInput>

export const heldPlace = z.object({ jobId: id, version })
export type HeldPlace = z.infer<typeof heldPlace>

export const heldPlaces = z.object({ places: z.array(heldPlace).min(1).max(12) })
export type HeldPlaces = z.infer<typeof heldPlaces>

/** What is other than it was booked; left out: as it is. */
const otherWork = {
  treatmentIds: treatmentIds.optional(),
  condition: condition.optional(),
  scope,
  sizeClass: sizeClass.optional(),
}

export const changeOffersInput = z.object({
  id,
  ...otherWork,
  askedDate: date.optional(),
  /** Brought on this day at the earliest. */
  notBefore: date.optional(),
})
export type ChangeOffersInput = z.infer<typeof changeOffersInput>

/** Another place, other work, or both. Its prices follow from the shop's rules where the work is other. */
export const changeInput = z.object({ id, version, ...otherWork, plan })
export type ChangeInput = z.infer<typeof changeInput>

/** Nobody came; `fee`: what the shop asks for that is put on its bill. */
export const noShowInput = z.object({ id, version, fee: z.boolean() })
export type NoShowInput = z.infer<typeof noShowInput>

/** When the car comes, or is fetched, as its owner said. */
export const laterInput = z.object({ id, version, at: minute })
export type LaterInput = z.infer<typeof laterInput>

/** The same of a car that is not fetched; `fee`: the shop's for each day it stands here is put on its bill. */
export const fetchInput = laterInput.extend({ fee: z.boolean() })
export type FetchInput = z.infer<typeof fetchInput>
