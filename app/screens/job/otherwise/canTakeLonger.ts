import type { JobView } from '../../../../main/api/views.ts'

/** A step of work that is not finished. */
export function canTakeLonger({ kind, actualEndAt }: JobView['steps'][number]): boolean {
  return kind === 'work' && actualEndAt === null
}
