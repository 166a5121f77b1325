import { say } from '../../../main/domain/language/index.ts'
import pieces from '../../parts/pieces.module.css'

/** Nobody is told when the working out ends: whoever shows what is behind looks again. */
export function whileBehind({ state }: { state: { data?: { behind: number } | undefined } }): number | false {
  return state.data && state.data.behind > 0 ? 5_000 : false
}

/** That visits are still being worked out anew, as after a change of the opening hours: the list is not the last word. */
export function Behind({ plans }: { plans: number }) {
  if (plans === 0) return null
  return (
    <p role="status" className={pieces.soft}>
      {say(
        '{plans} {plans, plural, one {plan is} other {plans are}} being worked out anew; until then their visits stand as they were before.',
        { plans },
      )}
    </p>
  )
}
