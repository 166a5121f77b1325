import fc from 'fast-check'
import { expect, test } from 'vitest'
import { promise } from '../../../main/domain/schedule/promise.ts'
import type { OfferKind, Problem } from '../../../main/domain/schedule/types.ts'
import { promiseOfWithin, promiseWithin } from '../../../main/domain/schedule/within.ts'
import { bestWay, everyWay, type Way } from './bruteForce.ts'
import { smallProblem } from './cases.ts'

const figures: Record<OfferKind, (way: Way) => number[]> = {
  soonest: way => [way.handover, way.blockedOpen, way.moves, -way.dropOff],
  leastBlocked: way => [way.blockedOpen, way.handover, way.moves, -way.dropOff],
  askedDay: way => [way.dropOff, way.handover, way.blockedOpen, way.moves],
}
const kinds = Object.keys(figures) as OfferKind[]

test('Without windows it is the promise, and with none that is free there is no offer', () => {
  fc.assert(
    fc.property(smallProblem({ extensions: false }), problem => {
      const plain = promise(problem)
      const without = promiseWithin(problem, null)
      for (const kind of kinds) {
        expect(without[kind].offer).toEqual(plain[kind])
        expect(promiseOfWithin(problem, kind, null).offer).toEqual(plain[kind])
        expect(promiseOfWithin(problem, kind, []).offer.feasible).toBe(false)
        expect(
          promiseOfWithin(problem, kind, [{ from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY }])
            .offer,
        ).toEqual(plain[kind])
      }
    }),
    { numRuns: 40 },
  )
})

/** Every offer against every plan that lies in one of the windows. */
function compare(problem: Problem, windows: readonly { from: number; to: number }[]): number {
  const ways = everyWay(problem).filter(way =>
    windows.some(({ from, to }) => from <= way.dropOff && way.handover <= to),
  )
  let feasible = 0
  for (const kind of kinds) {
    const allowed = kind === 'askedDay' ? ways.filter(way => way.dropOff >= problem.newJob.asked) : ways
    const best = bestWay(allowed, figures[kind])
    const { offer } = promiseOfWithin(problem, kind, windows)
    expect(offer.feasible, kind).toBe(best !== undefined)
    if (!best || !offer.feasible) continue
    feasible++
    expect(figures[kind](offer), kind).toEqual(figures[kind](best))
  }
  return feasible
}

test('Each offer is the best of all plans that lie within one window, which may overlap', () => {
  let feasible = 0
  fc.assert(
    fc.property(
      smallProblem({ extensions: false }),
      fc.array(fc.tuple(fc.integer({ min: -20, max: 400 }), fc.integer({ min: 1, max: 400 })), {
        maxLength: 4,
      }),
      (problem, pairs) => {
        feasible += compare(
          problem,
          pairs.map(([from, length]) => ({ from, to: from + length })),
        )
      },
    ),
    { numRuns: 150 },
  )
  expect(feasible).toBeGreaterThan(20)
})
