/**
 * How long things keep, where some are gone before they could fail: the product-limit estimate (E. L. Kaplan and P. Meier,
 * Nonparametric estimation from incomplete observations, J. Amer. Statist. Assoc. 53, 1958).
 */
export interface Kept {
  /** Days it was watched, 0 or more. */
  readonly days: number
  /** It failed on that day; else it was good until then and out of sight after. */
  readonly ended: boolean
}

/** The share still good after each day on which something failed, in order; the share only ever falls. */
export function keptShares(watched: readonly Kept[]): { days: number; share: number }[] {
  const failed = watched.filter(each => each.ended).map(each => each.days)
  let share = 1
  return [...new Set(failed)]
    .sort((a, b) => a - b)
    .map(days => {
      const atRisk = watched.filter(each => each.days >= days).length
      share *= 1 - failed.filter(each => each === days).length / atRisk
      return { days, share }
    })
}
