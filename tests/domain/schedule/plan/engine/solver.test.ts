import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { Link } from '../../../../../main/domain/schedule/plan/engine/links.ts'
import { Order } from '../../../../../main/domain/schedule/plan/engine/order.ts'
import { Room } from '../../../../../main/domain/schedule/plan/engine/room.ts'
import { Solver } from '../../../../../main/domain/schedule/plan/engine/solver.ts'
import { Sum } from '../../../../../main/domain/schedule/plan/engine/sum.ts'
import { cases } from '../../../cases.ts'

const everything = { learning: true, activity: true }
const top = 5
const count = 5
const points = Int32Array.from({ length: top + 1 }, (_, i) => i)

/** A rule over the values of variables 0 to 4, each 0 to 5, in the solver and in plain words. */
interface Rule {
  readonly add: (solver: Solver) => void
  readonly holds: (values: readonly number[]) => boolean
}

const variable = fc.nat(count - 1)
const literal = fc.tuple(fc.nat(2 * count - 1), fc.integer({ min: -top, max: top }))
const isTrue = (values: readonly number[], [side, number]: readonly [number, number]) =>
  (side % 2 === 0 ? values[side >> 1]! : -values[side >> 1]!) >= number
const rising = fc
  .array(fc.nat(3), { minLength: top + 1, maxLength: top + 1 })
  .map(steps => Int32Array.from(steps, (_, i) => steps.slice(0, i + 1).reduce((sum, step) => sum + step, 0)))

const clause = fc.array(literal, { minLength: 1, maxLength: 4 }).map(
  (literals): Rule => ({
    add: solver => solver.clause(literals.flat()),
    holds: values => literals.some(one => isTrue(values, one)),
  }),
)

const link = fc.tuple(variable, variable, rising, rising, fc.option(literal)).map(
  ([x, y, left, right, when]): Rule => ({
    add: solver => {
      const sides = [2 * x, 2 * y + 1, ...(when ? [when[0]] : [])]
      solver.watch(new Link(x, left, y, right, when ?? undefined), sides)
    },
    holds: values => (when && !isTrue(values, when)) || right[values[y]!]! >= left[values[x]!]!,
  }),
)

const sum = fc
  .tuple(variable, fc.array(fc.tuple(fc.nat(2 * count - 1), rising), { minLength: 1, maxLength: 3 }))
  .map(([total, pairs]): Rule => {
    const terms = pairs.map(([side, row]) => ({ side, first: side % 2 === 0 ? 0 : -top, row }))
    return {
      add: solver =>
        solver.watch(new Sum(terms, total), [2 * total + 1, ...terms.map(term => term.side)], true),
      holds: values =>
        terms.reduce((all, { side, first, row }) => {
          const value = values[side >> 1]!
          return all + row[(side % 2 === 0 ? value : -value) - first]!
        }, 0) <= values[total]!,
    }
  })

const room = fc
  .tuple(
    fc.array(fc.tuple(variable, variable, fc.option(literal)), { minLength: 2, maxLength: 4 }),
    fc.integer({ min: 1, max: 2 }),
  )
  .map(([triples, places]): Rule => {
    const uses = triples.map(([start, end, when]) => ({
      start,
      starts: points,
      end,
      ends: points,
      when: when ?? undefined,
    }))
    return {
      add: solver => {
        const all = Array.from({ length: 2 * count }, (_, side) => side)
        solver.watch(new Room(uses, places), all, true)
      },
      holds: values =>
        points.every(
          t =>
            uses.filter(
              ({ start, end, when }) =>
                (!when || isTrue(values, when)) && values[start]! <= t && t < values[end]!,
            ).length <= places,
        ),
    }
  })

/** Every assignment there is. */
function* assignments(length = count): Generator<number[]> {
  if (length === 0) return yield []
  for (const rest of assignments(length - 1))
    for (let value = 0; value <= top; value++) yield [...rest, value]
}
const all = [...assignments()]

function solverFor(rules: readonly Rule[], parts = everything): Solver {
  const solver = new Solver(parts)
  for (let x = 0; x < count; x++) solver.variable(0, top)
  for (const rule of rules) rule.add(solver)
  return solver
}

describe('against trying all values', () => {
  const rules = fc.array(fc.oneof(clause, link, sum, room), { minLength: 2, maxLength: 12 })
  for (const parts of [everything, { learning: false, activity: false }])
    test(`the least of a variable is found and proven, learning ${parts.learning ? 'on' : 'off'}`, () => {
      let solved = 0
      fc.assert(
        fc.property(rules, list => {
          const solver = solverFor(list, parts)
          const fitting = all.filter(values => list.every(rule => rule.holds(values)))
          const least = Math.min(...fitting.map(values => values[0]!))
          let best: number | undefined
          for (let goal = top; ; goal = best - 1) {
            const outcome = solver.run([1, -goal], 100_000)
            if (outcome !== 'found') {
              expect(outcome).toBe('none')
              break
            }
            const values = Array.from({ length: count }, (_, x) => solver.trail.least(x))
            expect(list.every(rule => rule.holds(values))).toBe(true)
            best = values[0]!
          }
          expect(best ?? Number.POSITIVE_INFINITY).toBe(least)
          if (best !== undefined) solved++
        }),
        { numRuns: cases(500), seed: 23 },
      )
      expect(solved).toBeGreaterThan(cases(50))
    })
})

describe('the solver', () => {
  test('stops at its limit of conflicts and goes on where it stopped', () => {
    // Seven cars and six places: pigeons, which take many conflicts.
    const solver = new Solver(everything)
    const pigeons = Array.from({ length: 7 }, () => Array.from({ length: 6 }, () => solver.variable(0, 1)))
    for (const holes of pigeons) solver.clause(holes.flatMap(x => [2 * x, 1]))
    for (let hole = 0; hole < 6; hole++)
      for (const [i, a] of pigeons.entries())
        for (const b of pigeons.slice(0, i)) solver.clause([2 * a[hole]! + 1, 0, 2 * b[hole]! + 1, 0])
    expect(solver.run([], 10)).toBe('limit')
    expect(solver.conflicts).toBe(10)
    expect(solver.run([], 1_000_000)).toBe('none')
    expect(solver.settle()).toBe(false)
  })

  test('tries the guide first', () => {
    const solver = new Solver(everything)
    const x = solver.variable(0, 9, 7)
    expect(solver.run([], 1)).toBe('found')
    expect(solver.trail.least(x)).toBe(7)
  })

  test('keeps what it learned true when the goal changes', () => {
    const solver = solverFor([])
    solver.watch(new Link(1, points, 0, points), [2, 1])
    expect(solver.run([1, -2, 2, 3], 10)).toBe('none')
    expect(solver.run([1, -3, 2, 3], 10)).toBe('found')
  })
})

test('an order refuses a circle, and only a circle that can be at one time', () => {
  const circle = (later: boolean) => {
    const solver = new Solver(everything)
    const nodes = [0, 1, 2].map(() => solver.variable(0, top))
    const yes = [0, 1, 2].map(() => solver.variable(0, 1, 1))
    const edges = nodes.map((before, i) => ({
      before,
      after: nodes[(i + 1) % 3]!,
      when: [2 * yes[i]!, 1] as const,
    }))
    if (later) edges.pop()
    solver.watch(
      new Order(edges, new Map(nodes.map(node => [node, points]))),
      yes.map(x => 2 * x),
      true,
    )
    return solver.run(
      yes.flatMap(x => [2 * x, 1]),
      10,
    )
  }
  expect(circle(false)).toBe('none')
  expect(circle(true)).toBe('found')
})
