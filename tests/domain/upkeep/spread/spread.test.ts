import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { SpreadResult, SpreadVisit } from '../../../../main/domain/upkeep/spread/spread.ts'
import { regret, solveWithHighs } from './highs.ts'
import { spread } from './spreadAtOnce.ts'

/** The goals a result reaches, worked out from its placements alone, after checking that it may be so at all. */
function verified(visits: readonly SpreadVisit[], room: readonly number[], result: SpreadResult) {
  const taken = room.map(() => 0)
  const byId = new Map(visits.map(visit => [visit.id, visit]))
  let late = 0
  let early = 0
  for (const { id, week, off } of result.placed) {
    const visit = byId.get(id)!
    byId.delete(id)
    expect(week).toBeGreaterThanOrEqual(visit.first)
    expect(week).toBeLessThanOrEqual(visit.last)
    expect(off).toBe(week - visit.due)
    taken[week]!++
    const cost = regret(visit, week, room.length)
    late += cost.late
    early += cost.early
  }
  taken.forEach((count, week) => {
    expect(count).toBeLessThanOrEqual(room[week]!)
  })
  expect(result.after).toEqual(taken)
  expect(new Set(result.left.map(({ id }) => id))).toEqual(new Set(byId.keys()))
  return { left: result.left.filter(one => one.because === 'full').length, late, early }
}

const problem = fc.integer({ min: 1, max: 12 }).chain(weeks =>
  fc.record({
    room: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: weeks, maxLength: weeks }),
    visits: fc
      .array(
        fc.tuple(
          fc.integer({ min: -2, max: weeks - 1 }),
          fc.integer({ min: 0, max: 6 }),
          fc.integer({ min: -4, max: weeks + 4 }),
        ),
        { maxLength: 40 },
      )
      .map(list =>
        list.map(
          ([first, length, due], i): SpreadVisit => ({ id: `v${i}`, first, last: first + length, due }),
        ),
      ),
  }),
)

describe('spreading visits over weeks', () => {
  it('reaches the goals HiGHS reaches, by a plan that keeps every rule', () => {
    fc.assert(
      fc.property(problem, ({ visits, room }) => {
        const result = spread(visits, room)
        const inPlan = visits.filter(visit => visit.last >= 0 && visit.first < room.length)
        expect(verified(visits, room, result)).toEqual(solveWithHighs(inPlan, room))
      }),
      { numRuns: 150 },
    )
  })

  it('costs the same in any order', () => {
    fc.assert(
      fc.property(problem, fc.array(fc.nat(), { minLength: 40, maxLength: 40 }), ({ visits, room }, keys) => {
        const shuffled = visits.map((visit, i) => [keys[i]!, visit] as const)
        const other = shuffled.toSorted(([a], [b]) => a - b).map(([, visit]) => visit)
        expect(verified(other, room, spread(other, room))).toEqual(
          verified(visits, room, spread(visits, room)),
        )
      }),
    )
  })

  it('says which weeks are too few for whom, by a count that proves it', () => {
    fc.assert(
      fc.property(problem, ({ visits, room }) => {
        const { left, tight } = spread(visits, room)
        const full = left.filter(one => one.because === 'full').length
        // Each set alone shows how many must be left over; together they show all of them.
        let proven = 0
        for (const { weeks, room: space, wanted } of tight) {
          const inside = visits.filter(({ first, last }) => {
            const from = Math.max(0, first)
            const to = Math.min(room.length - 1, last)
            if (from > to) return false
            for (let w = from; w <= to; w++) if (!weeks.includes(w)) return false
            return true
          })
          expect(wanted).toBe(inside.length)
          expect(space).toBe(weeks.reduce((sum, w) => sum + room[w]!, 0))
          proven += wanted - space
        }
        expect(proven).toBe(full)
      }),
      { numRuns: 300 },
    )
  })

  it('lets a spring rush wait rather than come early, and none of it leave its window', () => {
    const rush = Array.from({ length: 6 }, (_, i) => ({ id: `car ${i}`, first: 1, last: 4, due: 2 }))
    const result = spread(rush, [9, 2, 2, 2, 2])
    expect(result).toMatchObject({
      left: [],
      lateWeeks: 2,
      earlyWeeks: 2,
      before: [0, 0, 6, 0, 0],
      after: [0, 2, 2, 2, 0],
    })
  })

  it('names who does not fit', () => {
    const visits = [
      { id: 'a', first: 1, last: 1, due: 1 },
      { id: 'b', first: 1, last: 1, due: 1 },
      { id: 'c', first: 7, last: 9, due: 8 },
    ]
    const result = spread(visits, [3, 1, 3])
    expect(result.placed).toHaveLength(1)
    expect(result.left).toContainEqual({ id: 'c', because: 'no-week' })
    expect(result.left.filter(one => one.because === 'full')).toHaveLength(1)
    expect(result.tight).toEqual([{ weeks: [1], room: 1, wanted: 2 }])
  })

  it('does not leave a long overdue visit over to look less late', () => {
    const visits = [
      { id: 'overdue', first: 0, last: 0, due: -20 },
      { id: 'fresh', first: 0, last: 1, due: 0 },
    ]
    const result = spread(visits, [1, 1])
    expect(result.placed).toEqual([
      { id: 'overdue', week: 0, off: 20 },
      { id: 'fresh', week: 1, off: 1 },
    ])
  })

  it('spreads nothing over nothing', () => {
    expect(spread([], [])).toMatchObject({ placed: [], left: [], tight: [], before: [], after: [] })
  })

  it.each([
    [[{ id: 'a', first: 0, last: 1, due: 0 }], [-1], 'room.0'],
    [[{ id: 'a', first: 0, last: 1, due: 0 }], [1.5], 'room.0'],
    [[{ id: 'a', first: 2, last: 1, due: 0 }], [1], 'visits.0.last'],
    [[{ id: 'a', first: 0, last: 1, due: 0.5 }], [1], 'visits.0.due'],
    [
      [
        { id: 'a', first: 0, last: 1, due: 0 },
        { id: 'a', first: 0, last: 1, due: 0 },
      ],
      [1],
      'visits.1.id',
    ],
  ])('refuses %j in room %j', (visits, room, field) => {
    expect(() => spread(visits, room)).toThrow(expect.objectContaining({ field }))
  })
})
