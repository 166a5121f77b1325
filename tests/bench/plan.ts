/** The day plan: reference cases to their proof, weeks against their bounds, growth, and what each part brings. */
import { layShop } from '../../main/domain/schedule/plan/classic.ts'
import { type Laying, layFloor } from '../../main/domain/schedule/plan/layFloor.ts'
import { allParts, type LayParts } from '../../main/domain/schedule/plan/parts.ts'
import { isBetter } from '../../main/domain/schedule/plan/seed.ts'
import { type FloorProblem, type Variant, variants } from '../../main/domain/schedule/plan/types.ts'
import { type Highs, loadHighs } from '../domain/schedule/highs.ts'
import { floorCases, shopCase } from '../domain/schedule/plan/cases.ts'
import { floorByMilp } from '../domain/schedule/plan/floorMilp.ts'
import { verifyFloor } from '../domain/schedule/plan/verifyFloor.ts'
import { verifyShop } from '../domain/schedule/plan/verifyShop.ts'
import { inventedWeek } from './plan/week.ts'
import type { Figure } from './run.ts'

const goals = { smallS: 10, shopS: 10, noWaitS: 600, gapPercent: 5, ratio: 50 }
const weekS = 10
const offS = 4
const mediumS = 60
const noWaitLimitS = 120
const highsLimitS = 30
const highsCases = ['s01', 's08', 's11']

function figure(
  name: string,
  value: number,
  unit: string,
  goal: string | null = null,
  met: boolean | null = null,
): Figure {
  return { bench: 'plan', case: name, value: Math.round(value * 1000) / 1000, unit, goal, met }
}

/** Runs a search for so many seconds at the most; the last it came to and the time it took. */
function timed<T>(search: Iterator<T, T>, limitS: number) {
  const start = performance.now()
  for (;;) {
    const { value, done } = search.next()
    const seconds = (performance.now() - start) / 1000
    if (done || seconds >= limitS) return { last: value, seconds }
  }
}

function layTimed(floor: FloorProblem, limitS: number, parts: Partial<LayParts> = {}) {
  const { last, seconds } = timed(layFloor(floor, { parts }), limitS)
  const objections = last.plan ? verifyFloor(floor, last.plan) : []
  if (objections.length > 0) throw new Error(`${floor.id}: ${objections.join('; ')}`)
  return { last, seconds }
}

/** How far the tardiness, and the blocked minutes once that is proven, are above their bounds; all of it without a plan. */
function gapPercent({ objective, bound }: Laying): number {
  if (!objective) return 100
  const key = objective.weightedTardiness > bound.weightedTardiness ? 'weightedTardiness' : 'blockedOpen'
  return objective[key] === 0 ? 0 : (100 * (objective[key] - bound[key])) / objective[key]
}

/** Yields one figure after another; reads the reference cases and writes nothing. */
export async function* run(): AsyncGenerator<Figure> {
  yield* small()
  for (const variant of variants) yield* shop('ft06', variant, goals.shopS)
  yield* besideHighs(await loadHighs())
  yield* medium()
  yield* noWait()
  yield* weeks()
  yield* switchedOff()
}

function* small(): Generator<Figure> {
  let total = 0
  for (const { floor, optimal } of floorCases('small')) {
    const { last, seconds } = layTimed(floor, goals.smallS)
    if (!last.proven || isBetter(optimal, last.objective!)) throw new Error(`${floor.id} is not proven`)
    total += seconds
  }
  const goal = `at most ${goals.smallS} s; CP-SAT with two workers took 2.3 s`
  yield figure('small.json, twelve cases to the proof', total, 's', goal, total <= goals.smallS)
}

function* shop(name: string, variant: Variant, limitS: number): Generator<Figure, number> {
  const { shop: jobs, optima } = shopCase(name)
  const { last, seconds } = timed(layShop(jobs, variant), limitS)
  const objections = verifyShop(jobs, variant, last.plan!)
  if (objections.length > 0) throw new Error(`${name} ${variant}: ${objections.join('; ')}`)
  const gap = (100 * (last.costs![0]! - last.bound[0]!)) / last.costs![0]!
  const text = `${name} ${variant}: ${last.costs![0]}, bound ${last.bound[0]}, best known ${optima[variant]!.makespan}`
  yield figure(text, seconds, 's', `proven within ${limitS} s`, last.proven)
  if (!last.proven) yield figure(`${name} ${variant}, gap`, gap, '%')
  return seconds
}

/** The smallest cases by HiGHS as well, in the same run; only its solving counts. */
function* besideHighs(highs: Highs): Generator<Figure> {
  const ratios: number[] = []
  for (const { floor } of floorCases('small').filter(({ floor }) => highsCases.includes(floor.id!))) {
    let solving = 0
    const watched = {
      solve: (...args: Parameters<Highs['solve']>) => {
        const start = performance.now()
        const result = highs.solve(...args)
        solving += (performance.now() - start) / 1000
        return result
      },
    }
    const theirs = floorByMilp(watched, floor, { mip_rel_gap: 0, mip_abs_gap: 0, time_limit: highsLimitS })
    const { last, seconds } = layTimed(floor, goals.smallS)
    const ours = Object.values(last.objective!)
    if (theirs && theirs.join() !== ours.join())
      throw new Error(`${floor.id}: HiGHS comes to ${theirs.join('/')}, not ${ours.join('/')}`)
    ratios.push(solving / seconds)
    yield figure(`${floor.id}, HiGHS ${theirs ? 'to the same proof' : 'without a proof'}`, solving, 's')
    yield figure(`${floor.id}, ours`, seconds, 's')
  }
  const median = ratios.sort((a, b) => a - b)[ratios.length >> 1]!
  // Where HiGHS was stopped without a proof, its time and so the ratio are the least they can be.
  yield figure(
    'HiGHS against ours, median, at the least',
    median,
    'ratio',
    `at least ${goals.ratio}`,
    median >= goals.ratio,
  )
}

function* medium(): Generator<Figure> {
  for (const { floor, optimal } of floorCases('medium')) {
    const { last, seconds } = layTimed(floor, mediumS)
    const { objective, bound } = last
    const told = (cost: Laying['bound']) => `${cost.weightedTardiness}/${cost.blockedOpen}/${cost.moves}`
    yield figure(
      `${floor.id}, ${floor.jobs.length} cars: ${told(objective!)}, bound ${told(bound)}${last.proven ? ', proven' : ''}`,
      seconds,
      's',
      `reach ${told(optimal)}`,
      !isBetter(optimal, objective!),
    )
  }
}

function* noWait(): Generator<Figure> {
  let total = 0
  for (const name of ['la01', 'la02', 'la03', 'la04', 'la05'])
    total += yield* shop(name, 'noWait', noWaitLimitS)
  const goal = `at most ${goals.noWaitS} s`
  yield figure('la01 to la05 noWait together', total, 's', goal, total <= goals.noWaitS)
}

function* weeks(): Generator<Figure> {
  for (const seed of [1, 2, 3]) {
    const floor = inventedWeek(30, seed)
    const first = layFloor(floor).next().value
    const { last } = layTimed(floor, weekS)
    const gap = gapPercent(last)
    const met = gap <= goals.gapPercent && !(first.objective && isBetter(first.objective, last.objective!))
    yield figure(`12 bays, ${floor.id}: gap after ${weekS} s`, gap, '%', `at most ${goals.gapPercent} %`, met)
  }
  for (const cars of [10, 20, 40, 80]) {
    const { last, seconds } = layTimed(inventedWeek(cars, 1), weekS)
    yield figure(`growth, ${cars} cars: ${last.proven ? 'proven' : 'stopped'} after`, seconds, 's')
    yield figure(`growth, ${cars} cars: gap`, gapPercent(last), '%')
  }
}

/** The twelve small cases and the first three weeks with one part switched off at a time. */
function* switchedOff(): Generator<Figure> {
  const floors = [...floorCases('small'), ...floorCases('medium').slice(0, 3)].map(({ floor }) => floor)
  const off: (keyof LayParts)[] = ['insertion', 'learning', 'activity', 'neighbourhoods', 'bisection']
  for (const part of [undefined, ...off]) {
    const parts = part ? { ...allParts, [part]: false } : allParts
    let total = 0
    let proven = 0
    let conflicts = 0
    for (const floor of floors) {
      const { last, seconds } = layTimed(floor, offS, parts)
      total += seconds
      conflicts += last.conflicts
      if (last.proven) proven++
    }
    const name = `without ${part ?? 'nothing'}: ${proven} of ${floors.length} proven`
    yield figure(`${name}, time`, total, 's')
    yield figure(`${name}, conflicts`, conflicts, 'count')
  }
}
