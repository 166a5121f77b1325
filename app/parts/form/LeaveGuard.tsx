import { useBlocker } from '@tanstack/react-router'
import { mayLeave, unsavedWithin } from '../../data/unsaved.ts'

/** Asks before another screen, another row or a closed window would lose what was typed. */
export function LeaveGuard() {
  useBlocker({
    shouldBlockFn: async ({ current, next }) =>
      current.pathname !== next.pathname && !(await mayLeave(document.body)),
    enableBeforeUnload: () => unsavedWithin(document.body) !== null,
  })
  return null
}
