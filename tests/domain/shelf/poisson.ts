/** Poisson chances of 0, 1, 2 ... until the rest is below 1e-13 (NIST/SEMATECH e-Handbook 1.3.6.6.19). */
export function poisson(mean: number): Float64Array {
  const chances = [Math.exp(-mean)]
  let sum = chances[0]!
  for (let k = 1; k <= mean || 1 - sum > 1e-13; k++) {
    chances.push((chances[k - 1]! * mean) / k)
    sum += chances[k]!
  }
  return Float64Array.from(chances)
}
