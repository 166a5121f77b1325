import { type Command, commands } from './commands.ts'

/** How long the second key of a pair may take, in milliseconds. */
export const pairMs = 1_500

export interface Pending {
  key: string
  /** Milliseconds, of the event's own clock. */
  at: number
}

/**
 * What a key (as `keySaid` has it) means after the one before it: a command to run, the first of a pair (wait for the second), or nothing here.
 */
export function keyMeaning(
  key: string,
  before: Pending | null,
  nowMs: number,
): { command: Command } | { first: true } | null {
  if (before && nowMs - before.at <= pairMs) {
    const command = commands.find(({ keys }) => keys[0] === before.key && keys[1] === key)
    if (command) return { command }
  }
  const single = commands.find(({ keys }) => keys.length === 1 && keys[0] === key)
  if (single) return { command: single }
  return commands.some(({ keys }) => keys.length === 2 && keys[0] === key) ? { first: true } : null
}

/** Whether a key pressed there is text being typed, or belongs to a dialog. */
export function isTaken(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false
  return (
    target.isContentEditable ||
    target.closest(
      'input:not([type=checkbox], [type=radio], [type=button]), textarea, select, [role=dialog]',
    ) !== null
  )
}
