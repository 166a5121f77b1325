import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'
import { type LifePoint, type Local, logLikelihood } from './likelihood.ts'
import { checkReadings, type LifeReading } from './reading.ts'
import { checkLevel, type Weibull } from './weibull.ts'

/**
 * What is believed of a life before anything is seen: `level` of them still work at `age`. Both beliefs are normal on
 * the log scale; a spread of 0.35 says "right to within a factor of 1.4, two times of three".
 */
export interface LifePrior {
  readonly age: number
  /** The share of lives taken to work still at `age`, between 0 and 1. */
  readonly level: number
  readonly shape: number
  readonly ageSpread: number
  readonly shapeSpread: number
}

export interface LifeFit {
  readonly life: Weibull
  /** Log-likelihood of the readings, without the prior's part. */
  readonly logLikelihood: number
  /** What was maximised: the log-likelihood less the prior's penalty. */
  readonly objective: number
}

export interface FitOptions {
  /** Absent: plain maximum likelihood. */
  readonly prior?: LifePrior | null
  /** Holds the shape and fits the age alone. */
  readonly shape?: number
}

/** Which of the two numbers a climb may not change. */
export type Held = 'shape' | 'age' | 'nothing'

const TIGHT = 1e-11
const STEPS = 200
const MAX_STEP = 1.5
/** A top less curved than this (per life, on the log scale) is a plain. */
const FLAT = 1e-7
/** Shapes outside this belong to no wear anybody has seen; a fit that runs there has no maximum. */
const SHAPE_LIMIT = Math.log(200)

/** The penalised log-likelihood at a point: likelihood, less half the squared distance from the prior in spreads. */
export function objectiveAt(
  readings: readonly LifeReading[],
  point: LifePoint,
  hazardAtAge: number,
  prior: LifePrior | null,
): Local {
  const sum = logLikelihood(readings, point, hazardAtAge)
  if (!prior) return sum
  // The prior speaks of its own level's age; on this curve that lies (ln h' - ln h)/k further along.
  const gap = Math.log(-Math.log(prior.level) / hazardAtAge) * Math.exp(-point.logShape)
  const z = (point.logAge + gap - Math.log(prior.age)) / prior.ageSpread
  const y = (point.logShape - Math.log(prior.shape)) / prior.shapeSpread
  const zShape = -gap / prior.ageSpread
  sum.value -= (z * z + y * y) / 2
  sum.age -= z / prior.ageSpread
  sum.shape -= z * zShape + y / prior.shapeSpread
  sum.ageAge -= 1 / prior.ageSpread ** 2
  sum.ageShape -= zShape / prior.ageSpread
  sum.shapeShape -= zShape ** 2 - z * zShape + 1 / prior.shapeSpread ** 2
  return sum
}

/** Refuses a belief that is none: a level outside 0..1, or an age, shape or spread that is no number over 0. */
export function checkPrior(prior: LifePrior, field = 'prior'): void {
  checkLevel(prior.level, `${field}.level`)
  for (const name of ['age', 'shape', 'ageSpread', 'shapeSpread'] as const)
    if (!(prior[name] > 0 && Number.isFinite(prior[name])))
      refuse(
        'prior-bad',
        { [`${field}.${name}`]: prior[name] },
        say('{name} {prior} must be a number over 0.', { name, prior: prior[name] }),
      )
}

/** A first guess: the prior, or the middle of what was read with a shape that wears out slowly. */
export function startPoint(
  readings: readonly LifeReading[],
  hazardAtAge: number,
  prior: LifePrior | null,
  heldShape?: number,
): LifePoint {
  const shape = heldShape ?? prior?.shape ?? 1.5
  const logShape = Math.log(shape)
  if (prior)
    return { logAge: Math.log(prior.age) + Math.log(hazardAtAge / -Math.log(prior.level)) / shape, logShape }
  let sum = 0
  let lives = 0
  for (const { from, to, count = 1 } of readings) {
    sum += count * Math.log(to === null ? Math.max(from, 1e-9) * 1.3 : (Math.max(from, to / 4) + to) / 2)
    lives += count
  }
  return { logAge: sum / lives + Math.log(hazardAtAge) / shape, logShape }
}

function clamp(step: number): number {
  return Math.max(-MAX_STEP, Math.min(MAX_STEP, step))
}

/** One Newton step, bent towards steepest ascent until the curvature is that of a hill. */
function stepFrom(at: Local, held: Held): { age: number; shape: number } {
  if (held === 'shape')
    return { age: clamp(at.ageAge < 0 ? -at.age / at.ageAge : Math.sign(at.age)), shape: 0 }
  if (held === 'age')
    return { age: 0, shape: clamp(at.shapeShape < 0 ? -at.shape / at.shapeShape : Math.sign(at.shape)) }
  let damp = 0
  for (;;) {
    const a = -at.ageAge + damp
    const b = -at.ageShape
    const c = -at.shapeShape + damp
    const det = a * c - b * b
    if (a > 0 && det > 1e-12 * a * Math.abs(c)) {
      const age = (c * at.age - b * at.shape) / det
      const shape = (a * at.shape - b * at.age) / det
      const shrink = Math.min(1, MAX_STEP / Math.max(Math.abs(age), Math.abs(shape)))
      return { age: age * shrink, shape: shape * shrink }
    }
    damp = damp === 0 ? 1e-3 * (Math.abs(at.ageAge) + Math.abs(at.shapeShape) + 1) : damp * 4
  }
}

/**
 * Climbs to the top of the penalised likelihood by damped Newton steps. Null when there is no top: the likelihood
 * keeps rising towards an endless life or a shape no wear has, as it does where no life was seen to end.
 */
export function climb(
  readings: readonly LifeReading[],
  from: LifePoint,
  hazardAtAge: number,
  prior: LifePrior | null,
  held: Held = 'nothing',
): { point: LifePoint; at: Local } | null {
  let point = from
  let at = objectiveAt(readings, point, hazardAtAge, prior)
  for (let n = 0; n < STEPS; n++) {
    const step = stepFrom(at, held)
    let share = 1
    let there = point
    let next = at
    for (; share > 1e-9; share /= 2) {
      there = { logAge: point.logAge + share * step.age, logShape: point.logShape + share * step.shape }
      next = objectiveAt(readings, there, hazardAtAge, prior)
      if (next.value >= at.value) break
    }
    if (share <= 1e-9 || share * Math.max(Math.abs(step.age), Math.abs(step.shape)) < TIGHT)
      return settled(at, held) ? { point, at } : null
    point = there
    at = next
    if (Math.abs(point.logShape) > SHAPE_LIMIT) return null
  }
  return null
}

/** Whether a place without slope is a top at all, and not a plain that only flattens out for ever. */
function settled(at: Local, held: Held): boolean {
  if (held === 'shape') return -at.ageAge > FLAT
  if (held === 'age') return -at.shapeShape > FLAT
  return -at.ageAge > FLAT && at.ageAge * at.shapeShape - at.ageShape ** 2 > FLAT * -at.ageAge
}

/**
 * Fits a Weibull life to readings: by maximum likelihood, or with a prior by the maximum of the likelihood times the
 * prior (so that without readings the prior comes back, and among many readings it no longer counts). Ages in the
 * readings' unit. Refuses `life-undetermined` when the readings alone settle no life.
 *
 * Checked against NIST/SEMATECH e-Handbook of Statistical Methods, section 8.4.1.
 */
export function fitLife(readings: readonly LifeReading[], options: FitOptions = {}): LifeFit {
  checkReadings(readings)
  const prior = options.prior ?? null
  if (prior) checkPrior(prior)
  if (options.shape !== undefined && !(options.shape > 0))
    refuse(
      'shape-bad',
      { shape: options.shape },
      say('A shape of {shape} must be over 0.', { shape: options.shape }),
    )
  const hazardAtAge = -Math.log(prior?.level ?? 0.9)
  const held: Held = options.shape === undefined ? 'nothing' : 'shape'
  const top =
    prior || readings.length > 0
      ? climb(readings, startPoint(readings, hazardAtAge, prior, options.shape), hazardAtAge, prior, held)
      : null
  if (!top)
    refuse(
      'life-undetermined',
      { readings: readings.length },
      say(
        'These readings alone settle no life; add readings at other ages, some of them gone, or give what the data sheet says.',
      ),
    )
  const shape = Math.exp(top.point.logShape)
  return {
    life: { shape, scale: Math.exp(top.point.logAge) / hazardAtAge ** (1 / shape) },
    logLikelihood: logLikelihood(readings, top.point, hazardAtAge).value,
    objective: top.at.value,
  }
}
