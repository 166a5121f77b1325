/** A visit as it was sold, with the opening minutes in which it kept a bay and nobody worked on it. */
export interface SoldVisit {
  readonly blockedMin: number
  readonly treatments: readonly { readonly name: string; readonly priceMinor: number }[]
}

export interface TreatmentCost {
  readonly name: string
  readonly visits: number
  readonly blockedMin: number
  readonly revenueMinor: number
  /** Blocked minutes for each hundred of the currency; null: nothing was earned with it. */
  readonly blockedPerHundred: number | null
}

/**
 * What each treatment blocked for what it earned, the dearest first. A visit of several treatments shares its blocked
 * minutes among them by their prices, alike where all are free: which of them a hold waits for is not kept.
 * @param minorPerHundred minor units in a hundred of the currency: 10,000 where it has cents
 */
export function treatmentCosts(visits: readonly SoldVisit[], minorPerHundred: number): TreatmentCost[] {
  const sums = new Map<string, { visits: number; blocked: number; revenueMinor: number }>()
  for (const { blockedMin, treatments } of visits) {
    const whole = treatments.reduce((sum, each) => sum + each.priceMinor, 0)
    for (const { name, priceMinor } of treatments) {
      const share = whole > 0 ? priceMinor / whole : 1 / treatments.length
      const sum = sums.get(name) ?? { visits: 0, blocked: 0, revenueMinor: 0 }
      sums.set(name, {
        visits: sum.visits + 1,
        blocked: sum.blocked + blockedMin * share,
        revenueMinor: sum.revenueMinor + priceMinor,
      })
    }
  }
  return [...sums]
    .map(([name, { visits: count, blocked, revenueMinor }]) => ({
      name,
      visits: count,
      blockedMin: Math.round(blocked),
      revenueMinor,
      blockedPerHundred: revenueMinor > 0 ? (blocked * minorPerHundred) / revenueMinor : null,
    }))
    .sort(
      (a, b) =>
        (b.blockedPerHundred ?? Number.POSITIVE_INFINITY) -
          (a.blockedPerHundred ?? Number.POSITIVE_INFINITY) ||
        b.blockedMin - a.blockedMin ||
        (a.name < b.name ? -1 : 1),
    )
}
