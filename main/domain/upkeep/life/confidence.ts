/** How sure a stated range is. Only these, so that nobody reads meaning into the third digit of a confidence. */
export type Confidence = 0.8 | 0.9 | 0.95 | 0.99

/** Two-sided standard normal quantiles (NIST/SEMATECH e-Handbook, section 1.3.6.7.1, with more digits). */
const QUANTILES: Record<Confidence, number> = {
  0.8: 1.2815515655446004,
  0.9: 1.6448536269514722,
  0.95: 1.959963984540054,
  0.99: 2.5758293035489004,
}

/** How many standard deviations either side of the middle hold that share of a normal distribution. */
export function deviates(confidence: Confidence): number {
  return QUANTILES[confidence]
}
