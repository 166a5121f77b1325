import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'

/** Why a person is asked before a change goes through; the screens know the question by this word. */
export type Question =
  | 'touches-bookings'
  | 'in-use'
  | 'known-already'
  | 'restores'
  | 'erases'
  | 'mixes-lots'
  | 'not-electronic'

/**
 * Stops a change until the person making it has seen what it touches: `lines` name that, and none is nothing to ask.
 * With `accepted` it goes through.
 * @throws Refusal with the question as its code.
 */
export function askFirst(
  question: Question,
  lines: readonly string[],
  { field, lead, accepted }: { field: string; lead: string; accepted: boolean | undefined },
): void {
  if (lines.length > 0 && !accepted) refuse(question, { [field]: lines }, listed(lead, lines))
}

/** The lead, then at most twelve lines, one under the other. */
export function listed(lead: string, lines: readonly string[]): string {
  const shown = lines.slice(0, 12)
  const left = lines.length - shown.length
  return [lead, ...shown, ...(left > 0 ? [say('and {left} more', { left })] : [])].join('\n')
}
