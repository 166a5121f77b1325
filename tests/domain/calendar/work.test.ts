import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { endOfWork, firstOpenAt, openMinutesBetween, spanSet } from '../../../main/domain/calendar/index.ts'

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

// Naive twins: walk minute by minute.
const isOpen = (set: { from: number; to: number }[], at: number) => set.some(s => s.from <= at && at < s.to)
function naiveEnd(
  set: { from: number; to: number }[],
  startAt: number,
  minutes: number,
  splittable: boolean,
) {
  if (!isOpen(set, startAt)) return null
  let left = minutes
  for (let at = startAt; at < 300; at++) {
    if (left === 0) return at
    if (isOpen(set, at)) left--
    else if (!splittable) return null
    if (left === 0) return at + 1
  }
  return null
}

describe('hands-on minutes in openings', () => {
  it('ends when the last minute is done, as a walk by single minutes finds', () => {
    fc.assert(
      fc.property(sets, moments, fc.integer({ min: 0, max: 90 }), fc.boolean(), (set, at, minutes, split) => {
        expect(endOfWork(set, at, minutes, split)).toBe(naiveEnd(set, at, minutes, split))
      }),
      { numRuns: 1000 },
    )
  })

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

  it.each([-1, 0.5, Number.NaN])('refuses %s minutes', minutes => {
    expect(() => endOfWork([{ from: 0, to: 10 }], 0, minutes, true)).toThrow(
      expect.objectContaining({ name: 'Refusal', field: 'minutes', value: minutes }),
    )
  })
})
