import { oneRow, rowAccepted } from '../services/desk/inputs.ts'
import { vehicleInput } from '../services/records/inputs.ts'
import { archiveVehicle, restoreVehicle, saveVehicle } from '../services/records/vehicles.ts'
import { changeHands } from '../services/upkeep/changeHands.ts'
import { takeHandsBack } from '../services/upkeep/handsBack.ts'
import { handsInput } from '../services/upkeep/inputs.ts'
import { procedure, router } from './trpc.ts'

export const vehicles = router({
  save: procedure.input(vehicleInput).mutation(({ ctx, input }) => saveVehicle(ctx, input)),
  archive: procedure.input(oneRow).mutation(({ ctx, input }) => archiveVehicle(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreVehicle(ctx, input)),
  changeHands: procedure.input(handsInput).mutation(({ ctx, input }) => changeHands(ctx, input)),
  takeHandsBack: procedure.input(rowAccepted).mutation(({ ctx, input }) => takeHandsBack(ctx, input)),
})
