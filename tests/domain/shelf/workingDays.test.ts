import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dateOfDay, dayNumber } from '../../../main/domain/calendar/index.ts'
import {
  afterWorkingDays,
  checkSupplier,
  leadTimeOf,
  orderDay,
  workingDayOf,
  workingDaysBetween,
} from '../../../main/domain/shelf/index.ts'
import { leadChances } from '../../../main/domain/shelf/workingDays.ts'
import { supplier } from './supplierFixture.ts'

const day = (date: string) => dayNumber(date)
const works = workingDayOf(supplier)

describe('working days', () => {
  it('carry a lead time over a weekend and the supplier’s holidays', () => {
    // Thursday 2 April 2026; Good Friday and Easter Monday closed.
    expect(dateOfDay(afterWorkingDays(day('2026-04-02'), 1, works))).toBe('2026-04-07')
    expect(dateOfDay(afterWorkingDays(day('2026-04-02'), 3, works))).toBe('2026-04-09')
    expect(dateOfDay(afterWorkingDays(day('2026-04-04'), 0, works))).toBe('2026-04-07')
  })

  it('count back what they added', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20_000, max: 20_700 }),
        fc.integer({ min: 0, max: 30 }),
        (from, count) => {
          const start = afterWorkingDays(from, 0, works)
          const end = afterWorkingDays(from, count, works)
          expect(works(end)).toBe(true)
          expect(workingDaysBetween(start, end, works)).toBe(count)
        },
      ),
    )
  })

  it('put an order after the cut-off on the next one', () => {
    expect(dateOfDay(orderDay(supplier, day('2026-04-02'), 14 * 60))).toBe('2026-04-02')
    expect(dateOfDay(orderDay(supplier, day('2026-04-02'), 14 * 60 + 1))).toBe('2026-04-07')
    expect(dateOfDay(orderDay({ ...supplier, cutoffMin: null }, day('2026-04-02'), 1439))).toBe('2026-04-02')
  })

  it('are missed in a calendar that has none', () => {
    const never = {
      weekdays: [1],
      closedOn: Array.from({ length: 110 }, (_, k) => dateOfDay(day('2026-01-05') + 7 * k)),
    }
    expect(() => afterWorkingDays(day('2026-01-05'), 0, workingDayOf(never))).toThrow(/No working day/)
    expect(() => checkSupplier({ ...supplier, weekdays: [] })).toThrow(/at least one working day/)
    expect(() => checkSupplier({ ...supplier, lead: { meanDays: 2, sdDays: 3 } })).toThrow(/spread of 3 days/)
  })
})

describe('lead times', () => {
  it('have the mean asked for, never less than a day, and about the spread', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.5, max: 20, noNaN: true }),
        fc.double({ min: 0.1, max: 0.6, noNaN: true }),
        (meanDays, cv) => {
          const sdDays = meanDays * cv
          const chances = leadChances({ meanDays, sdDays })
          const mean = chances.reduce((sum, chance, k) => sum + k * chance, 0)
          const variance = chances.reduce((sum, chance, k) => sum + (k - mean) ** 2 * chance, 0)
          expect(chances[0]).toBe(0)
          expect(chances.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9)
          expect(mean).toBeCloseTo(meanDays, 6)
          // Whole days add a twelfth of a day squared, and the blend at most a quarter.
          expect(Math.abs(Math.sqrt(variance) - sdDays)).toBeLessThan(0.45)
        },
      ),
    )
  })

  it('are learned from deliveries, three at the least', () => {
    expect(leadTimeOf([4, 5])).toBeNull()
    expect(leadTimeOf([4, 5, 9])).toEqual({ meanDays: 6, sdDays: Math.sqrt(7) })
  })
})
