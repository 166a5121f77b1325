import { acceptRelay } from '../services/dayPlan/accept.ts'
import { bayUse } from '../services/dayPlan/bayUse.ts'
import {
  acceptInput,
  keepInput,
  pinInput,
  relayInput,
  useInput,
  whatIfInput,
} from '../services/dayPlan/inputs.ts'
import { pinJob } from '../services/dayPlan/pin.ts'
import { beginRelay, dropRelay, relayStands, stopRelay } from '../services/dayPlan/relay.ts'
import { takeBackRelay } from '../services/dayPlan/takeBack.ts'
import {
  beginWhatIf,
  curingCars,
  discardWhatIf,
  keepWhatIf,
  stopWhatIf,
  whatIfStands,
} from '../services/dayPlan/whatIf.ts'
import { procedure, router } from './trpc.ts'

/** The floor laid anew: found beside the desk, looked at, accepted by the car. */
export const dayPlan = router({
  relay: procedure.input(relayInput).query(({ ctx, input }) => relayStands(ctx, input)),
  begin: procedure.input(relayInput).mutation(({ ctx, input }) => beginRelay(ctx, input)),
  stop: procedure.mutation(({ ctx }) => stopRelay(ctx)),
  drop: procedure.mutation(({ ctx }) => dropRelay(ctx)),
  accept: procedure.input(acceptInput).mutation(({ ctx, input }) => acceptRelay(ctx, input)),
  takeBack: procedure.mutation(({ ctx }) => takeBackRelay(ctx)),
  pin: procedure.input(pinInput).mutation(({ ctx, input }) => pinJob(ctx, input)),
  bayUse: procedure.input(useInput).query(({ ctx, input }) => bayUse(ctx, input)),
  whatIf: router({
    stands: procedure.query(({ ctx }) => whatIfStands(ctx)),
    curing: procedure.query(({ ctx }) => curingCars(ctx)),
    begin: procedure.input(whatIfInput).mutation(({ ctx, input }) => beginWhatIf(ctx, input)),
    stop: procedure.mutation(({ ctx }) => stopWhatIf(ctx)),
    keep: procedure.input(keepInput).mutation(({ ctx, input }) => keepWhatIf(ctx, input)),
    discard: procedure.mutation(({ ctx }) => discardWhatIf(ctx)),
  }),
})
