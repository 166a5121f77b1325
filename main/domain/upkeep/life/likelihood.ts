import type { LifeReading } from './reading.ts'

/**
 * A Weibull life as the fit sees it: `logAge`, the logarithm of the age at which a chosen share still works, and
 * `logShape`. Both may be any number, and near a shop's renewal age the two hardly pull at each other, which shape and
 * scale do strongly.
 */
export interface LifePoint {
  readonly logAge: number
  readonly logShape: number
}

/** A function's value at a point, with its first and second derivatives by (logAge, logShape). */
export interface Local {
  value: number
  age: number
  shape: number
  ageAge: number
  ageShape: number
  shapeShape: number
}

/** Cumulative hazard H(t) = hazardAtAge * exp(shape * (ln t - logAge)) with its derivatives. */
function hazard(t: number, point: LifePoint, hazardAtAge: number): Local {
  if (t <= 0) return { value: 0, age: 0, shape: 0, ageAge: 0, ageShape: 0, shapeShape: 0 }
  const k = Math.exp(point.logShape)
  const u = k * (Math.log(t) - point.logAge)
  const value = hazardAtAge * Math.exp(u)
  return {
    value,
    age: -k * value,
    shape: u * value,
    ageAge: k * k * value,
    ageShape: -k * (1 + u) * value,
    shapeShape: u * (1 + u) * value,
  }
}

function add(sum: Local, weight: number, part: Local) {
  sum.value += weight * part.value
  sum.age += weight * part.age
  sum.shape += weight * part.shape
  sum.ageAge += weight * part.ageAge
  sum.ageShape += weight * part.ageShape
  sum.shapeShape += weight * part.shapeShape
}

/** ln f(t) of an end seen happen: ln shape - ln t + ln H - H. */
function addExact(sum: Local, count: number, t: number, point: LifePoint, hazardAtAge: number) {
  const h = hazard(t, point, hazardAtAge)
  const k = Math.exp(point.logShape)
  const u = k * (Math.log(t) - point.logAge)
  sum.value += count * (point.logShape - Math.log(t) + Math.log(hazardAtAge) + u)
  sum.age -= count * k
  sum.shape += count * (1 + u)
  sum.ageShape -= count * k
  sum.shapeShape += count * u
  add(sum, -count, h)
}

/** ln(S(from) - S(to)) = -H(from) + ln(1 - exp(-D)), D = H(to) - H(from). */
function addInterval(sum: Local, count: number, from: Local, to: Local) {
  const d: Local = { ...to }
  add(d, -1, from)
  const rate = 1 / Math.expm1(d.value)
  const bend = -rate * (1 + rate)
  add(sum, -count, from)
  sum.value += count * Math.log(-Math.expm1(-d.value))
  sum.age += count * rate * d.age
  sum.shape += count * rate * d.shape
  sum.ageAge += count * (rate * d.ageAge + bend * d.age * d.age)
  sum.ageShape += count * (rate * d.ageShape + bend * d.age * d.shape)
  sum.shapeShape += count * (rate * d.shapeShape + bend * d.shape * d.shape)
}

/**
 * The log-likelihood of the readings at a point, with derivatives. `hazardAtAge` is -ln of the share that `logAge`
 * stands for. Minus infinity or NaN where a point is so far off that it cannot be told from impossible.
 * (Interval-censored likelihood: NIST/SEMATECH e-Handbook of Statistical Methods, section 8.4.1.2.)
 */
export function logLikelihood(
  readings: readonly LifeReading[],
  point: LifePoint,
  hazardAtAge: number,
): Local {
  const sum: Local = { value: 0, age: 0, shape: 0, ageAge: 0, ageShape: 0, shapeShape: 0 }
  for (const { from, to, count = 1 } of readings) {
    if (to === from) addExact(sum, count, from, point, hazardAtAge)
    else if (to === null) add(sum, -count, hazard(from, point, hazardAtAge))
    else addInterval(sum, count, hazard(from, point, hazardAtAge), hazard(to, point, hazardAtAge))
  }
  return sum
}
