import { bookPlace, confirmPlace, holdPlace, releasePlace } from '../services/booking/booking.ts'
import { bookFleet, holdFleet, releaseFleet } from '../services/booking/fleet.ts'
import { heldPlaces } from '../services/booking/held.ts'
import {
  fleetInput,
  heldPlaces as heldFleet,
  heldPlace,
  holdInput,
  offersInput,
} from '../services/booking/inputs.ts'
import { offers } from '../services/booking/offers.ts'
import { procedure, router } from './trpc.ts'

export const booking = router({
  offers: procedure.input(offersInput).query(({ ctx, input }) => offers(ctx, input)),
  hold: procedure.input(holdInput).mutation(({ ctx, input }) => holdPlace(ctx, input)),
  book: procedure.input(holdInput).mutation(({ ctx, input }) => bookPlace(ctx, input)),
  held: procedure.query(({ ctx }) => heldPlaces(ctx)),
  confirm: procedure.input(heldPlace).mutation(({ ctx, input }) => confirmPlace(ctx, input)),
  release: procedure.input(heldPlace).mutation(({ ctx, input }) => releasePlace(ctx, input)),

  /** A place for each of several cars, all or none. */
  holdFleet: procedure.input(fleetInput).mutation(({ ctx, input }) => holdFleet(ctx, input)),
  bookFleet: procedure.input(heldFleet).mutation(({ ctx, input }) => bookFleet(ctx, input)),
  releaseFleet: procedure.input(heldFleet).mutation(({ ctx, input }) => releaseFleet(ctx, input)),
})
