/** The day plan: reference cases to their proof, weeks against their bounds, growth, and what each part brings. */
import { layShop } from '../../main/domain/schedule/plan/classic.ts'
import { type Laying, layFloor } from '../../main/domain/schedule/plan/layFloor.ts'
import { allParts, type LayParts } from '../../main/domain/schedule/plan/parts.ts'
import { isBetter } from '../../main/domain/schedule/plan/seed.ts'
import { type Variant, variants } from '../../main/domain/schedule/plan/types.ts'
import { floorCases, shopCase } from '../domain/schedule/plan/cases.ts'
import { verifyShop } from '../domain/schedule/plan/verifyShop.ts'
import { besideOthers } from './plan/beside.ts'
import { figure, layTimed, timed } from './plan/timed.ts'
import { inventedWeek } from './plan/week.ts'
import { atTheWindow } from './plan/window.ts'
import type { Figure } from './run.ts'

const goals = { smallS: 10, shopS: 10, noWaitS: 600, gapPercent: 5 }
const weekS = 10
const offS = 4
const shutS = 2
const shutBayAt = 2
const mediumS = 60
const noWaitLimitS = 120

/** How far the tardiness, and the blocked minutes once that is proven, are above their bounds; all of it without a plan. */
function gapPercent({ objective, bound }: Laying): number {
  if (!objective) return 100
  const key = objective.weightedTardiness > bound.weightedTardiness ? 'weightedTardiness' : 'blockedOpen'
  return objective[key] === 0 ? 0 : (100 * (objective[key] - bound[key])) / objective[key]
}

/** Late minutes by weight, blocked minutes and moves. */
const told = (cost: Laying['bound']) => `${cost.weightedTardiness}/${cost.blockedOpen}/${cost.moves}`

function reached({ objective, bound, proven }: Laying): string {
  return `${objective ? told(objective) : 'no plan'}, bound ${told(bound)}${proven ? ', proven' : ''}`
}

/** Yields one figure after another; reads the reference cases and writes nothing. */
export async function* run(): AsyncGenerator<Figure> {
  yield* small()
  for (const variant of variants) yield* shop('ft06', variant, goals.shopS)
  yield* besideOthers()
  yield* medium()
  yield* noWait()
  yield* weeks()
  yield* shutBay()
  yield* atTheWindow()
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

function* medium(): Generator<Figure> {
  for (const { floor, optimal } of floorCases('medium')) {
    const { last, seconds } = layTimed(floor, mediumS)
    yield figure(
      `${floor.id}, ${floor.jobs.length} cars: ${reached(last)}`,
      seconds,
      's',
      `reach ${told(optimal)}`,
      !isBetter(optimal, last.objective!),
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
    const name = `12 bays, ${floor.id}: ${reached(last)}, gap after ${weekS} s`
    yield figure(name, gap, '%', `at most ${goals.gapPercent} %`, met)
  }
  for (const cars of [10, 20, 40, 80]) {
    const { last, seconds } = layTimed(inventedWeek(cars, 1), weekS)
    yield figure(`growth, ${cars} cars: ${last.proven ? 'proven' : 'stopped'} after`, seconds, 's')
    yield figure(`growth, ${cars} cars: ${reached(last)}, gap`, gapPercent(last), '%')
  }
}

/** A laid week in which a bay is shut: what a short search comes to with the plan repaired first, and without. */
function* shutBay(): Generator<Figure> {
  for (const cars of [30, 60]) {
    const week = inventedWeek(cars, 1)
    const present = layTimed(week, weekS).last.plan!
    const shut = week.bays[shutBayAt]!.id
    const bays = week.bays.map(bay =>
      bay.id === shut ? { ...bay, closed: [{ from: 0, to: week.horizon }] } : bay,
    )
    for (const repair of [true, false]) {
      const { last } = layTimed({ ...week, bays }, shutS, { present, parts: { repair } })
      const told = last.objective ? Object.values(last.objective).join('/') : 'no plan'
      const name = `${cars} cars, a bay shut, ${shutS} s ${repair ? 'with' : 'without'} repair (${told})`
      yield figure(`${name}: cars changed`, last.objective?.changes ?? cars, 'count')
    }
  }
}

/** The twelve small cases and the first three weeks with one part switched off at a time: each floor all ways in turn. */
function* switchedOff(): Generator<Figure> {
  const floors = [...floorCases('small'), ...floorCases('medium').slice(0, 3)].map(({ floor }) => floor)
  const off: (keyof LayParts)[] = ['insertion', 'learning', 'activity', 'neighbourhoods', 'bisection']
  const ways = [undefined, ...off].map(part => ({ part, total: 0, proven: 0, conflicts: 0 }))
  for (const floor of floors)
    for (const way of ways) {
      const parts = way.part ? { ...allParts, [way.part]: false } : allParts
      const { last, seconds } = layTimed(floor, offS, { parts })
      way.total += seconds
      way.conflicts += last.conflicts
      if (last.proven) way.proven++
    }
  for (const { part, total, proven, conflicts } of ways) {
    const name = `without ${part ?? 'nothing'}: ${proven} of ${floors.length} proven`
    yield figure(`${name}, time`, total, 's')
    yield figure(`${name}, conflicts`, conflicts, 'count')
  }
}
