/** What the board is asked and told. */
import { z } from 'zod'
import { date, id, minute, position, version } from '../desk/inputs.ts'

export const boardInput = z.object({ fromDate: date, days: z.int().min(1).max(31) })
export type BoardInput = z.infer<typeof boardInput>

/** `position` is that of the dragged stay's first step. */
export const moveInput = z.object({ jobId: id, version, position, bayId: id, startAt: minute })
export type MoveInput = z.infer<typeof moveInput>
