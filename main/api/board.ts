import { boardRange } from '../services/board/board.ts'
import { moveStay, tryMove } from '../services/board/boardMove.ts'
import { boardInput, moveInput } from '../services/board/inputs.ts'
import { procedure, router } from './trpc.ts'

export const board = router({
  range: procedure.input(boardInput).query(({ ctx, input }) => boardRange(ctx, input)),
  tryMove: procedure.input(moveInput).query(({ ctx, input }) => tryMove(ctx, input)),
  move: procedure.input(moveInput).mutation(({ ctx, input }) => moveStay(ctx, input)),
})
