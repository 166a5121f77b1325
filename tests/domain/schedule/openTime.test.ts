import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  endOfWork,
  isDoorOpen,
  openBefore,
  openingAt,
  openTime,
} from '../../../main/domain/schedule/openTime.ts'

const spans = fc.array(
  fc.record({ from: fc.integer({ min: 0, max: 90 }), length: fc.integer({ min: 1, max: 15 }) }),
  { maxLength: 8 },
)

test('the collapsed axis agrees with counting minute by minute', () => {
  fc.assert(
    fc.property(spans, fc.integer({ min: 1, max: 40 }), (list, minutes) => {
      const open = list.map(({ from, length }) => ({ from, to: from + length }))
      const isOpen = (t: number) => open.some(o => o.from <= t && t < o.to)
      const hours = openTime(open)
      for (let t = 0, count = 0; t <= 110; t++) {
        expect(openBefore(hours, t)).toBe(count)
        // A door is open from opening up to and with the closing minute.
        expect(isDoorOpen(hours, t)).toBe(isOpen(t) || isOpen(t - 1))
        expect(openingAt(hours, t) !== undefined).toBe(isOpen(t))
        if (isOpen(t)) {
          let end = t
          for (let left = minutes; left > 0 && end <= 200; end++) if (isOpen(end)) left--
          expect(endOfWork(hours, t, minutes)).toBe(end > 200 ? Number.POSITIVE_INFINITY : end)
          count++
        }
      }
    }),
  )
})
