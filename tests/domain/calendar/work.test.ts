import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { firstOpenAt, openMinutesBetween, spanSet } from '../../../main/domain/calendar/index.ts'

const sets = fc
  .array(
    fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 1, max: 30 })).map(([from, length]) => ({
      from,
      to: from + length,
    })),
    { maxLength: 8 },
  )
  .map(spanSet)
const moments = fc.integer({ min: -10, max: 250 })

// Naive twin: walks minute by minute.
const isOpen = (set: { from: number; to: number }[], at: number) => set.some(s => s.from <= at && at < s.to)
describe('hands-on minutes in openings', () => {
  it('counts open minutes', () => {
    fc.assert(
      fc.property(sets, moments, moments, (set, from, to) => {
        let count = 0
        for (let at = from; at < to; at++) if (isOpen(set, at)) count++
        expect(openMinutesBetween(set, from, to)).toBe(count)
      }),
      { numRuns: 1000 },
    )
  })

  it('finds the first open minute, the closing minute too when asked', () => {
    fc.assert(
      fc.property(sets, moments, fc.boolean(), (set, at, closing) => {
        let found: number | null = null
        for (let t = at; t < 300 && found === null; t++)
          if (isOpen(set, t) || (closing && set.some(s => s.to === t))) found = t
        expect(firstOpenAt(set, at, closing)).toBe(found)
      }),
      { numRuns: 500 },
    )
  })
})
