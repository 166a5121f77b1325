import { say } from '../language/index.ts'
import { tTail } from '../measure/tQuantile.ts'
import { refuse } from '../refusal.ts'
import { type Effort, spreadsOf, type Visit } from './learn.ts'

/** What no visit was ever stretched or shortened by: beyond it something else went wrong. */
const bounds = { least: 0.4, most: 3 }

/**
 * What planned hands-on minutes are multiplied with so that a share `p` of such visits takes no longer; 0.5 is the median.
 * @throws Refusal `share-bad` for a share that is none.
 */
export function effortFactor(effort: Effort, visit: Visit, p: number): number {
  if (!(p > 0 && p < 1))
    refuse('share-bad', { p }, say('{p} is not a share between 0 and 1; give one such as 0.8.', { p }))
  const spreads = spreadsOf(effort, visit)
  const shareBelow = (value: number) =>
    spreads.reduce((sum, { middle, scale, weight }) => {
      const t = (value - middle) / scale
      return sum + weight * (t < 0 ? tTail(-t, effort.freedom) : 1 - tTail(t, effort.freedom))
    }, 0)
  let [low, high] = [Math.log(bounds.least), Math.log(bounds.most)]
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2
    if (shareBelow(middle) < p) low = middle
    else high = middle
  }
  return Math.exp((low + high) / 2)
}
