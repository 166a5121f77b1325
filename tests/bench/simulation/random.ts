/** Seeded random numbers for simulations: the same seed gives the same shop on every machine. */
export type Random = () => number

/** Uniform numbers in [0, 1): the "mulberry32" generator, public domain. */
export function seeded(seed: number): Random {
  let state = seed | 0
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
}

/** How many events happen at a mean of `mean` (Knuth's product of uniforms). */
export function poissonDraw(random: Random, mean: number): number {
  const limit = Math.exp(-mean)
  let count = 0
  for (let product = random(); product > limit; product *= random()) count++
  return count
}

/** One of the values, by weight. */
export function pick<T>(random: Random, entries: readonly (readonly [T, number])[]): T {
  let rest = random() * entries.reduce((sum, [, weight]) => sum + weight, 0)
  for (const [value, weight] of entries) {
    rest -= weight
    if (rest < 0) return value
  }
  return entries.at(-1)![0]
}

/** A standard normal number (Box and Muller). */
export function normalDraw(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
}
