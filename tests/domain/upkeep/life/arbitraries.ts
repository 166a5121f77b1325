import fc from 'fast-check'
import type { LifePrior } from '../../../../main/domain/upkeep/life/fit.ts'
import type { DatedInspection, ObservedLife } from '../../../../main/domain/upkeep/life/learn.ts'
import type { LifeReading } from '../../../../main/domain/upkeep/life/reading.ts'

const age = fc.integer({ min: 20, max: 900 })

/** One to twelve groups of readings, of all kinds. */
export const readings: fc.Arbitrary<LifeReading[]> = fc
  .array(
    fc.record({
      from: age,
      to: fc.option(fc.integer({ min: 0, max: 300 })),
      early: fc.boolean(),
      count: fc.integer({ min: 1, max: 6 }),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map(groups =>
    groups.map(({ from, to, early, count }) => {
      if (to === null) return { from, to: null, count }
      return early ? { from: 0, to: from, count } : { from, to: from + to, count }
    }),
  )

export const aPrior: fc.Arbitrary<LifePrior> = fc.record({
  age: fc.integer({ min: 60, max: 400 }),
  level: fc.constantFrom(0.8, 0.9, 0.95),
  shape: fc.double({ min: 1.2, max: 4, noNaN: true }),
  ageSpread: fc.double({ min: 0.2, max: 0.6, noNaN: true }),
  shapeSpread: fc.double({ min: 0.2, max: 0.6, noNaN: true }),
})

/** The nth day of 2026 as a date. */
export function dayOf(n: number): string {
  return Temporal.PlainDate.from('2026-01-01').add({ days: n }).toString()
}

/** Lives looked at up to three times, the last look perhaps finding it gone. */
export const lives: fc.Arbitrary<ObservedLife[]> = fc.array(
  fc
    .record({
      laid: fc.integer({ min: 0, max: 300 }),
      ages: fc.array(age, { minLength: 1, maxLength: 3 }),
      gone: fc.boolean(),
    })
    .map(({ laid, ages, gone }) => {
      const sorted = [...new Set(ages)].sort((a, b) => a - b)
      const inspections: DatedInspection[] = sorted.map((at, i) => ({
        age: at,
        working: !(gone && i === sorted.length - 1),
        on: dayOf(laid + at),
      }))
      return { inspections }
    }),
  { maxLength: 25 },
)
