import type { Desk } from '../../../main/services/desk/desk.ts'
import { history } from '../../../main/services/history/history.ts'

/** What the history says of a job, newest first. */
export async function saidOf(desk: Desk, jobId: string): Promise<string[]> {
  const { lines } = await history(desk, { entities: ['job'], entityId: jobId })
  return lines.map(({ words }) => words)
}
