import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { median, robustSpread } from '../../../main/domain/measure/index.ts'
import { handsOf, realUse, realUseText, type UseReading } from '../../../main/domain/shelf/index.ts'
import { normalDraw, seeded } from '../../bench/simulation/random.ts'

const reading = (actualCenti: number, at: number, part: Partial<UseReading> = {}): UseReading => ({
  productId: 'p',
  sizeClass: 'medium',
  technicianId: 'anna',
  recipeCenti: 3000,
  actualCenti,
  at,
  ...part,
})

describe('robust middle and spread', () => {
  it('hardly move however wild a minority is', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 900, max: 1100, noNaN: true }), { minLength: 9, maxLength: 30 }),
        fc.array(fc.double({ min: -1e9, max: 1e9, noNaN: true }), { maxLength: 4 }),
        (sound, wild) => {
          const middle = median([...sound, ...wild])
          expect(middle).toBeGreaterThanOrEqual(900)
          expect(middle).toBeLessThanOrEqual(1100)
        },
      ),
    )
  })

  it('have a spread that is the standard deviation of normal readings', () => {
    const random = seeded(8)
    const values = Array.from({ length: 20_000 }, () => 50 + 7 * normalDraw(random))
    expect(robustSpread(values)).toBeGreaterThan(6.8)
    expect(robustSpread(values)).toBeLessThan(7.2)
    expect(robustSpread([5, 5, 5, 5, 9])).toBeGreaterThan(0)
    expect(robustSpread([])).toBe(0)
  })
})

describe('real use', () => {
  const random = seeded(5)
  const around = (middle: number, count: number, part: Partial<UseReading> = {}) =>
    Array.from({ length: count }, (_, i) => reading(Math.round(middle + 150 * normalDraw(random)), i, part))

  it('keeps a recipe that fits', () => {
    const [use] = realUse(around(3020, 20))
    expect(use).toMatchObject({ readings: 20, recipeCenti: 3000, suggestion: null })
    expect(realUseText(use!, 'ml')).toMatch(/^The recipe of 30 ml fits/)
  })

  it('suggests another where use differs by more than chance, and sets spilt bottles aside', () => {
    const [use] = realUse([...around(3600, 20), reading(25_000, 50), reading(24_000, 51)])
    expect(use!.farOutAt).toEqual([50, 51])
    expect(use!.suggestion!.centi).toBeGreaterThan(3480)
    expect(use!.suggestion!.centi).toBeLessThan(3720)
    expect(use!.suggestion!.sdCenti).toBeLessThan(300)
    expect(realUseText(use!, 'ml')).toMatch(/the recipe says 30 ml. 2 far-out readings/)
  })

  it('waits for enough readings, and looks at the latest', () => {
    expect(realUse(around(4000, 5))[0]!.suggestion).toBeNull()
    const changed = [...around(4000, 60), ...around(3000, 40).map((entry, i) => ({ ...entry, at: 100 + i }))]
    expect(realUse(changed)[0]).toMatchObject({ readings: 40, suggestion: null })
  })

  it('keeps sizes and products apart', () => {
    const cells = realUse([...around(3000, 8), ...around(5000, 8, { sizeClass: 'xl', recipeCenti: 5000 })])
    expect(cells.map(cell => [cell.sizeClass, cell.suggestion])).toEqual([
      ['medium', null],
      ['xl', null],
    ])
  })

  it('finds the hand that uses a fifth more, whatever cars it works on', () => {
    const hands = handsOf([
      ...around(3000, 14),
      ...around(3000, 14, { technicianId: 'bo' }),
      ...around(3600, 12, { technicianId: 'cy' }),
      ...around(5000, 14, { sizeClass: 'xl' }),
      ...around(5000, 14, { sizeClass: 'xl', technicianId: 'bo' }),
    ])
    const of = (technicianId: string) => hands.find(hand => hand.technicianId === technicianId)!
    expect(of('cy').real).toBe(true)
    expect(of('cy').ratio).toBeGreaterThan(1.12)
    expect(of('cy').ratio).toBeLessThan(1.26)
    expect(of('anna').real).toBe(false)
    expect(of('bo').real).toBe(false)
  })
})
