import type { CureMarks } from '../../main/api/views.ts'

/**
 * The cure age of a coat at a minute: along its running clock once it is laid, a minute a minute while it is planned.
 * 0 before the coat is finished.
 */
export function cureAge({ clock, coatEndAt }: CureMarks): (at: number) => number {
  const ages = clock?.ages ?? []
  if (ages.length < 2) return at => Math.max(0, at - coatEndAt)
  return at => {
    if (at <= coatEndAt) return 0
    const after = ages.findIndex(([mark]) => mark >= at)
    // Past the last point the clock runs on as between the last two.
    const i = Math.max(1, after < 0 ? ages.length - 1 : after)
    const [fromAt, from] = ages[i - 1]!
    const [toAt, to] = ages[i]!
    return from + ((to - from) * (at - fromAt)) / (toAt - fromAt)
  }
}
