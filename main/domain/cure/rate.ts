/**
 * How fast a coat cures at a temperature, as a multiple of its speed at the reference temperature, and how much age a
 * stretch of time adds. The sum of such stretches is the equivalent age of ASTM C1074 (written for concrete; borrowed
 * for its mathematics, formula from memory).
 */
import type { RateRule } from './profile.ts'

export interface Rate {
  /** 1 at the reference temperature. */
  of(celsius: number): number
  /** Temperatures at which the rate bends; integrals are cut there. */
  readonly kinks: readonly number[]
  /** Bound on how steeply the rate's logarithm climbs, per °C; integrals take smaller pieces where it is steep. */
  readonly steepness: number
}

const zeroCInK = 273.15
/** No bay is colder; the steepest an Arrhenius rate gets. */
const coldestK = 233.15

/** The rate of a profile's rule. Colder is never faster. */
export function rateOf(rule: RateRule, referenceC: number): Rate {
  if (rule.rule === 'arrhenius') {
    const { activationOverRK: q } = rule
    const atReference = 1 / (referenceC + zeroCInK)
    return {
      of: celsius => Math.exp(q * (atReference - 1 / (celsius + zeroCInK))),
      kinks: [],
      steepness: q / (coldestK * coldestK),
    }
  }
  if (rule.rule === 'doubling')
    return { of: celsius => 2 ** ((celsius - referenceC) / 10), kinks: [], steepness: Math.LN2 / 10 }
  const { datumC } = rule
  return {
    of: celsius => Math.max(0, (celsius - datumC) / (referenceC - datumC)),
    kinks: [datumC],
    steepness: 0,
  }
}

/** A rate that cold slows and heat does not quicken: heat counts only where a data sheet's heated-cure row says so. */
export function neverFaster(rate: Rate, referenceC: number): Rate {
  return {
    of: celsius => (celsius >= referenceC ? 1 : Math.min(1, rate.of(celsius))),
    kinks: [...rate.kinks, referenceC],
    steepness: rate.steepness,
  }
}

/** A rate that heat quickens and cold does not slow: by it a window closes, and cold never keeps one open. */
export function neverSlower(rate: Rate, referenceC: number): Rate {
  return {
    of: celsius => (celsius <= referenceC ? 1 : Math.max(1, rate.of(celsius))),
    kinks: [...rate.kinks, referenceC],
    steepness: rate.steepness,
  }
}

/** A rate that is another, steady one between two temperatures, both included; the first row that holds counts. */
export function withRows(
  rate: Rate,
  rows: readonly { readonly fromC: number; readonly toC: number; readonly speed: number }[],
): Rate {
  if (rows.length === 0) return rate
  return {
    of: celsius => rows.find(row => row.fromC <= celsius && celsius <= row.toC)?.speed ?? rate.of(celsius),
    kinks: [...rate.kinks, ...rows.flatMap(row => [row.fromC, row.toC])].sort((a, b) => a - b),
    steepness: rate.steepness,
  }
}

// Gauss-Legendre on [-1, 1]: three points are exact for polynomials up to degree five, five up to degree nine.
const three = { centre: 8 / 9, nodes: [Math.sqrt(3 / 5)], weights: [5 / 9] } as const
const five = {
  centre: 128 / 225,
  nodes: [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3],
  weights: [(322 + 13 * Math.sqrt(70)) / 900, (322 - 13 * Math.sqrt(70)) / 900],
} as const
/** Where the rate's logarithm moves less than this, three points do as well as five. */
const gentle = 0.1

/**
 * The age that `minutes` add while the temperature goes in a straight line from `fromC` to `toC`: exact at a steady
 * temperature, else to about 1e-12 of itself.
 */
export function ageOver(rate: Rate, minutes: number, fromC: number, toC: number): number {
  if (fromC === toC) {
    const steady = rate.of(fromC)
    // Endless time at a standstill adds nothing, where 0 × infinity has no value.
    return steady === 0 ? 0 : minutes * steady
  }
  const low = Math.min(fromC, toC)
  const high = Math.max(fromC, toC)
  let age = 0
  let start = low
  for (const kink of rate.kinks)
    if (kink > start && kink < high) {
      age += smoothAge(rate, minutes * ((kink - start) / (high - low)), start, kink)
      start = kink
    }
  return age + smoothAge(rate, minutes * ((high - start) / (high - low)), start, high)
}

/** The age over a straight stretch without a kink: its minutes times the mean of the rate. */
function smoothAge(rate: Rate, minutes: number, low: number, high: number): number {
  const climb = (high - low) * rate.steepness
  const pieces = Math.max(1, Math.ceil(climb))
  const { centre, nodes, weights } = climb < gentle ? three : five
  const half = (high - low) / pieces / 2
  let sum = 0
  for (let piece = 0; piece < pieces; piece++) {
    const middle = low + (2 * piece + 1) * half
    sum += centre * rate.of(middle)
    for (let i = 0; i < nodes.length; i++) {
      const off = half * nodes[i]!
      sum += weights[i]! * (rate.of(middle - off) + rate.of(middle + off))
    }
  }
  return (minutes * sum) / (2 * pieces)
}

/**
 * The minutes after which a straight stretch from `fromC` to `toC` lasting `minutes` has added `age`; the inverse of
 * `ageOver`. `age` lies between 0 and what the whole stretch adds.
 */
export function minutesTo(rate: Rate, age: number, minutes: number, fromC: number, toC: number): number {
  if (fromC === toC) return age / rate.of(fromC)
  const celsiusAt = (m: number) => fromC + ((toC - fromC) * m) / minutes
  let low = 0
  let high = minutes
  let guess = minutes / 2
  // Newton's steps, halving where one would leave the bracket; both ends close in on the answer.
  for (let step = 0; step < 100; step++) {
    const off = ageOver(rate, guess, fromC, celsiusAt(guess)) - age
    if (off < 0) low = guess
    else high = guess
    const next = guess - off / rate.of(celsiusAt(guess))
    const better = next > low && next < high ? next : (low + high) / 2
    if (Math.abs(better - guess) < 1e-12 * minutes) return better
    guess = better
  }
  return high
}
