/**
 * How long work really takes against what was planned, learned from the shop's own finished visits: a ridge regression of
 * ln(real / planned), which is the Bayesian linear model with a normal prior on each effect and an inverse-gamma prior on
 * the scatter (Gelman et al., Bayesian Data Analysis, chapter 14; from memory). With no visits it says what the shop
 * wrote, unsure; with each visit more of what the shop does.
 */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { cholesky, solveBoth, solveLower } from './cholesky.ts'

/** A visit as far as its hands-on time goes. */
export interface Visit {
  readonly sizeClass: string
  /** good, worn, heavy. */
  readonly condition: string
  /** Of the whole paint, above 0 to 1: how much of it was worked on. */
  readonly share: number
  /** What the intake marked, 0 for nothing and 1 and more for a badly worn car. */
  readonly severity: number
  /** Share of the planned hands-on minutes that were paint correction, 0 to 1. */
  readonly correction: number
  /** Who did most of it; null: nobody knows, or not yet. */
  readonly who: string | null
}

export interface FinishedVisit extends Visit {
  readonly plannedMin: number
  /** Opening minutes somebody was at it. */
  readonly realMin: number
}

/** How far each effect may plausibly reach, as a standard deviation of ln(real / planned). Assumptions of ours. */
const reach = {
  base: 0.4,
  condition: 0.15,
  size: 0.12,
  share: 0.2,
  severity: 0.2,
  correction: 0.25,
  who: 0.2,
}
/** The scatter of one visit before anything is known, and how many visits that assumption is worth. */
const scatter = { sd: 0.22, worth: 6 }

/** More are older than the way the shop works now. */
export const mostLearned = 400

export interface Effort {
  /** Visits it was learned from. */
  readonly visits: number
  /** Who is known, with the number of visits of each. */
  readonly people: ReadonlyMap<string, number>
  readonly names: ReadonlyMap<string, number>
  readonly effects: readonly number[]
  /** Lower triangle of the precision of the effects over the scatter. */
  readonly precision: readonly (readonly number[])[]
  /** Degrees of freedom, and the scatter's variance as now believed. */
  readonly freedom: number
  readonly variance: number
}

type Features = ReadonlyMap<string, { value: number; reach: number }>

function featuresOf(visit: Visit, who: string | null): Features {
  const found = new Map<string, { value: number; reach: number }>([['base', { value: 1, reach: reach.base }]])
  if (visit.condition !== 'good')
    found.set(`condition ${visit.condition}`, { value: 1, reach: reach.condition })
  found.set(`size ${visit.sizeClass}`, { value: 1, reach: reach.size })
  found.set('share', { value: Math.log(visit.share), reach: reach.share })
  found.set('severity', { value: Math.min(3, visit.severity), reach: reach.severity })
  found.set('correction', { value: visit.correction - 0.5, reach: reach.correction })
  if (who !== null) found.set(`who ${who}`, { value: 1, reach: reach.who })
  return found
}

/**
 * Learns from finished visits; the last 400 count.
 * @throws Refusal `visit-bad` where minutes are not above 0, or the share of the paint is none.
 */
export function learnEffort(visits: readonly FinishedVisit[]): Effort {
  const used = visits.slice(-mostLearned)
  used.forEach(({ plannedMin, realMin, share }, i) => {
    if (!(plannedMin > 0 && realMin > 0 && share > 0 && share <= 1))
      refuse(
        'visit-bad',
        { [`visits.${i}`]: realMin },
        say('A finished visit takes more than no time on some of the paint.'),
      )
  })
  const rows = used.map(visit => featuresOf(visit, visit.who))
  const names = new Map<string, number>()
  const priors: number[] = []
  for (const row of rows)
    for (const [name, feature] of row)
      if (!names.has(name)) {
        names.set(name, names.size)
        priors.push((scatter.sd / feature.reach) ** 2)
      }
  const size = names.size
  const precision = priors.map((prior, i) => Array.from({ length: size }, (_, j) => (i === j ? prior : 0)))
  const right = new Array<number>(size).fill(0)
  let squares = 0
  for (const [i, row] of rows.entries()) {
    const y = Math.log(used[i]!.realMin / used[i]!.plannedMin)
    squares += y * y
    const own = [...row].map(([name, { value }]) => [names.get(name)!, value] as const)
    for (const [a, value] of own) {
      right[a]! += value * y
      for (const [b, other] of own) precision[a]![b]! += value * other
    }
  }
  const lower = cholesky(precision)
  const effects = solveBoth(lower, right)
  const fit = effects.reduce((sum, effect, i) => sum + effect * right[i]!, 0)
  const freedom = scatter.worth + used.length
  const people = new Map<string, number>()
  for (const { who } of used) if (who !== null) people.set(who, (people.get(who) ?? 0) + 1)
  return {
    visits: used.length,
    people,
    names,
    effects,
    precision: lower,
    freedom,
    variance: (scatter.worth * scatter.sd ** 2 + Math.max(0, squares - fit)) / freedom,
  }
}

export interface Spread {
  /** Middle and spread of ln(real / planned) of the next visit, by Student's t. */
  readonly middle: number
  readonly scale: number
  readonly weight: number
}

/**
 * What the next visit may take, as Student's t distributions of ln(real / planned): one where it is known who does it,
 * else one for each who may, as often as they did so far. An effect not met yet may be anything within its reach.
 */
export function spreadsOf(effort: Effort, visit: Visit): Spread[] {
  const known = [...effort.people]
  if (visit.who !== null || known.length === 0) return [spreadOf(effort, visit, visit.who, 1)]
  const total = known.reduce((sum, [, count]) => sum + count, 0)
  return known.map(([who, count]) => spreadOf(effort, visit, who, count / total))
}

function spreadOf(effort: Effort, visit: Visit, who: string | null, weight: number): Spread {
  const x = new Array<number>(effort.names.size).fill(0)
  let unknown = 0
  let middle = 0
  for (const [name, { value, reach }] of featuresOf(visit, who)) {
    const place = effort.names.get(name)
    if (place === undefined) unknown += (value * reach) ** 2 / scatter.sd ** 2
    else {
      x[place] = value
      middle += value * effort.effects[place]!
    }
  }
  const half = solveLower(effort.precision, x)
  const doubt = half.reduce((sum, each) => sum + each * each, 0) + unknown
  return { middle, scale: Math.sqrt(effort.variance * (1 + doubt)), weight }
}
