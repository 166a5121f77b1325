import { z } from 'zod'
import { boardRange } from '../services/board/board.ts'
import { moveStay, tryMove } from '../services/board/boardMove.ts'
import { date, id, minute, position, version } from '../services/desk/inputs.ts'
import { procedure, router } from './trpc.ts'

const move = z.object({ jobId: id, version, position, bayId: id, startAt: minute })

export const board = router({
  range: procedure
    .input(z.object({ fromDate: date, days: z.int().min(1).max(31) }))
    .query(({ ctx, input }) => boardRange(ctx, input)),

  tryMove: procedure.input(move).query(({ ctx, input }) => tryMove(ctx, input)),
  move: procedure.input(move).mutation(({ ctx, input }) => moveStay(ctx, input)),
})
