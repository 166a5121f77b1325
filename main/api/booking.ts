import { bookPlace, confirmPlace, holdPlace, releasePlace } from '../services/booking/booking.ts'
import { changeBooking } from '../services/booking/changeBooking.ts'
import { changeOffers } from '../services/booking/changeOffers.ts'
import { bookFleet, holdFleet, releaseFleet } from '../services/booking/fleet.ts'
import { heldPlaces } from '../services/booking/held.ts'
import {
  changeInput,
  changeOffersInput,
  fetchInput,
  fleetInput,
  heldPlaces as heldFleet,
  heldPlace,
  holdInput,
  laterInput,
  noShowInput,
  offersInput,
} from '../services/booking/inputs.ts'
import { offers } from '../services/booking/offers.ts'
import { comesLater, fetchLater, noShow } from '../services/booking/otherwise.ts'
import { procedure, router } from './trpc.ts'

export const booking = router({
  offers: procedure.input(offersInput).query(({ ctx, input }) => offers(ctx, input)),
  hold: procedure.input(holdInput).mutation(({ ctx, input }) => holdPlace(ctx, input)),
  book: procedure.input(holdInput).mutation(({ ctx, input }) => bookPlace(ctx, input)),
  held: procedure.query(({ ctx }) => heldPlaces(ctx)),
  confirm: procedure.input(heldPlace).mutation(({ ctx, input }) => confirmPlace(ctx, input)),
  release: procedure.input(heldPlace).mutation(({ ctx, input }) => releasePlace(ctx, input)),

  /** A booking that changes: places for it as it would be, and the one that is taken. */
  changeOffers: procedure.input(changeOffersInput).query(({ ctx, input }) => changeOffers(ctx, input)),
  change: procedure.input(changeInput).mutation(({ ctx, input }) => changeBooking(ctx, input)),
  noShow: procedure.input(noShowInput).mutation(({ ctx, input }) => noShow(ctx, input)),
  comesLater: procedure.input(laterInput).mutation(({ ctx, input }) => comesLater(ctx, input)),
  fetchLater: procedure.input(fetchInput).mutation(({ ctx, input }) => fetchLater(ctx, input)),

  /** A place for each of several cars, all or none. */
  holdFleet: procedure.input(fleetInput).mutation(({ ctx, input }) => holdFleet(ctx, input)),
  bookFleet: procedure.input(heldFleet).mutation(({ ctx, input }) => bookFleet(ctx, input)),
  releaseFleet: procedure.input(heldFleet).mutation(({ ctx, input }) => releaseFleet(ctx, input)),
})
