import fc from 'fast-check'
import { expect, test } from 'vitest'
import { checkPlan } from '../../../main/domain/schedule/checkPlan.ts'
import { promise } from '../../../main/domain/schedule/promise.ts'
import type { Offer, OfferKind, Problem } from '../../../main/domain/schedule/types.ts'
import { cases } from '../cases.ts'
import { bestWay, everyWay, type Way } from './bruteForce.ts'
import { smallProblem } from './cases.ts'
import { count, verify } from './verify.ts'

const figures: Record<OfferKind, (way: Way) => number[]> = {
  soonest: way => [way.handover, way.blockedOpen, way.moves, -way.dropOff],
  leastBlocked: way => [way.blockedOpen, way.handover, way.moves, -way.dropOff],
  askedDay: way => [way.dropOff, way.handover, way.blockedOpen, way.moves],
}

/** Every offer against every plan there is; how many offers there were. */
function compare(problem: Problem): number {
  const ways = everyWay(problem)
  const offers = promise(problem)
  // Stretches this short never hold the whole answer at once, so every way of ending early is passed.
  const piecemeal = promise(problem, 3 * problem.grid)
  let feasible = 0
  for (const kind of Object.keys(figures) as OfferKind[]) {
    const allowed = kind === 'askedDay' ? ways.filter(way => way.dropOff >= problem.newJob.asked) : ways
    const best = bestWay(allowed, figures[kind])
    const offer = offers[kind]
    expect(offer.feasible, kind).toBe(best !== undefined)
    if (!best || !offer.feasible) continue
    feasible++
    const { dropOff, handover, blockedOpen, moves } = offer
    expect(figures[kind]({ dropOff, handover, blockedOpen, moves }), kind).toEqual(figures[kind](best))
    sound(problem, offer)
    const other = piecemeal[kind]
    expect(other.feasible && figures[kind](other), `${kind}, searched piecemeal`).toEqual(figures[kind](best))
  }
  return feasible
}

/** No invariant is broken, by the verifier and by the product's own check. */
function sound(problem: Problem, offer: Offer) {
  expect(verify(problem, offer.plan)).toEqual([])
  expect(checkPlan(problem, offer.plan)).toEqual([])
  const { dropOff, handover, blockedOpen, moves } = offer
  expect(count(problem, offer.plan)).toEqual({ dropOff, handover, blockedOpen, moves })
}

test('the promise equals a search of every plan, on 400 cases in the published format', () => {
  let feasible = 0
  fc.assert(
    fc.property(smallProblem({ extensions: false }), problem => {
      feasible += compare(problem)
    }),
    { numRuns: cases(400) },
  )
  expect(feasible).toBeGreaterThan(cases(400))
}, 300_000)

test('the promise equals a search of every plan, on 400 cases with the app’s own fields', () => {
  let feasible = 0
  fc.assert(
    fc.property(smallProblem({ extensions: true }), problem => {
      feasible += compare(problem)
    }),
    { numRuns: cases(400) },
  )
  expect(feasible).toBeGreaterThan(cases(300))
}, 300_000)

test('the promise equals a search of every plan, on 600 cases with help inside steps', () => {
  let feasible = 0
  let helped = 0
  fc.assert(
    fc.property(smallProblem({ extensions: true, help: true }), problem => {
      const found = compare(problem)
      feasible += found
      if (
        found > 0 &&
        problem.newJob.steps.some(step => step.kind === 'work' && step.skill !== null && step.help)
      )
        helped++
    }),
    { numRuns: 600 },
  )
  expect(feasible).toBeGreaterThan(200)
  expect(helped).toBeGreaterThan(20)
}, 300_000)
