import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  clip,
  difference,
  intersection,
  minutesIn,
  type Span,
  spanSet,
} from '../../../main/domain/calendar/index.ts'
import { indexFrom } from '../../../main/domain/calendar/spans.ts'

// The naive twin: a set of single minutes.
const minutes = (spans: readonly Span[]) => {
  const set = new Set<number>()
  for (const { from, to } of spans) for (let at = from; at < to; at++) set.add(at)
  return set
}
const sorted = (set: Set<number>) => [...set].sort((a, b) => a - b)

const lists = fc.array(
  fc.tuple(fc.integer({ min: -60, max: 60 }), fc.integer({ min: -3, max: 20 })).map(([from, length]) => ({
    from,
    to: from + length,
  })),
  { maxLength: 12 },
)
const sets = lists.map(spanSet)

function expectSet(set: readonly Span[]) {
  set.forEach((span, i) => {
    expect(span.from).toBeLessThan(span.to)
    if (i > 0) expect(set[i - 1]!.to).toBeLessThan(span.from)
  })
}

describe('interval sets against single minutes', () => {
  it('makes a set of any list, whatever its order', () => {
    fc.assert(
      fc.property(lists, list => {
        const set = spanSet(list)
        expectSet(set)
        expect(sorted(minutes(set))).toEqual(sorted(minutes(list)))
        expect(spanSet([...list].reverse())).toEqual(set)
        expect(minutesIn(set)).toBe(minutes(list).size)
      }),
    )
  })

  it.each([
    ['intersection', intersection, (a: Set<number>, b: Set<number>) => a.intersection(b)],
    ['difference', difference, (a: Set<number>, b: Set<number>) => a.difference(b)],
  ] as const)('%s', (_, ours, naive) => {
    fc.assert(
      fc.property(sets, sets, (a, b) => {
        const result = ours(a, b)
        expectSet(result)
        expect(sorted(minutes(result))).toEqual(sorted(naive(minutes(a), minutes(b))))
      }),
      { numRuns: 500 },
    )
  })

  it('clips, also to nothing', () => {
    fc.assert(
      fc.property(
        sets,
        fc.integer({ min: -70, max: 70 }),
        fc.integer({ min: -70, max: 70 }),
        (set, from, to) => {
          const kept = sorted(minutes(set)).filter(at => at >= from && at < to)
          expect(sorted(minutes(clip(set, from, to)))).toEqual(kept)
        },
      ),
    )
  })

  it('looks a minute up', () => {
    fc.assert(
      fc.property(sets, fc.integer({ min: -70, max: 90 }), (set, at) => {
        const after = set.findIndex(span => span.to > at)
        expect(indexFrom(set, at)).toBe(after < 0 ? set.length : after)
      }),
    )
  })
})
