import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type EarnedVisit, earnings } from '../../../main/domain/money/earns.ts'

const visit = (more: Partial<EarnedVisit> = {}): EarnedVisit => ({
  month: '2026-04',
  sold: [{ name: 'Two layers', minor: 100_000 }],
  chemicalsMinor: 8_000,
  workedMin: new Map([['Jo', 300]]),
  labourMinor: 4_000,
  bayMin: 600,
  blockedMin: 300,
  overnightMin: 720,
  ...more,
})

test('One visit, worked by hand', () => {
  const { treatments, overnightMinor } = earnings([visit()])
  // 1,000.00 less 80.00 and five hours at 40.00; ten hours of a bay, five of them blocked.
  expect(treatments).toMatchObject([
    { name: 'Two layers', contributionMinor: 72_000, perBayHourMinor: 7_200, blockedMin: 300, few: true },
  ])
  // Twelve hours of a bay at what an hour earned.
  expect(overnightMinor).toBe(86_400)
})

test('An overnight cure makes a bay hour worth more than the same cure by day', () => {
  const byDay = earnings([visit({ bayMin: 1_320, blockedMin: 1_020, overnightMin: 0 })])
  expect(earnings([visit()]).whole.perBayHourMinor!).toBeGreaterThan(byDay.whole.perBayHourMinor!)
})

test('By treatment, by crew and by month the parts sum to the whole', () => {
  const whole = fc.integer({ min: 0, max: 500_000 })
  const visits = fc.array(
    fc
      .record({
        month: fc.constantFrom('2026-03', '2026-04'),
        sold: fc.array(fc.record({ name: fc.constantFrom('A', 'B', 'C'), minor: whole }), {
          minLength: 1,
          maxLength: 3,
        }),
        chemicalsMinor: fc.double({ min: 0, max: 50_000, noNaN: true }),
        jo: fc.integer({ min: 0, max: 600 }),
        sal: fc.integer({ min: 0, max: 600 }),
        labourMinor: whole,
        bayMin: whole,
        blockedMin: whole,
        overnightMin: whole,
      })
      .map(({ jo, sal, ...rest }) => ({
        ...rest,
        workedMin: new Map([
          ['Jo', jo],
          ['Sal', sal],
        ]),
      })),
    { maxLength: 6 },
  )
  fc.assert(
    fc.property(visits, given => {
      const { treatments, crew, months, whole } = earnings(given)
      for (const key of ['revenueMinor', 'contributionMinor', 'bayMin', 'blockedMin'] as const)
        for (const parts of [treatments, crew, months])
          expect(parts.reduce((sum, each) => sum + each[key], 0)).toBe(whole[key])
    }),
  )
})

test('Nothing done earns nothing, and a bay hour of it is not known', () => {
  expect(earnings([])).toMatchObject({
    treatments: [],
    whole: { visits: 0, perBayHourMinor: null },
    overnightMinor: null,
  })
})

test('Listed by what a bay hour earned, the best first; of equals by name, and what took no bay last', () => {
  const one = (name: string, minor: number, bayMin = 600) => visit({ sold: [{ name, minor }], bayMin })
  const { treatments } = earnings([
    one('Quick wash', 400_000, 0),
    one('Polish', 50_000),
    one('Topper', 100_000),
    one('Glass', 50_000),
    one('Airing', 400_000, 0),
  ])
  expect(treatments.map(each => each.name)).toEqual(['Topper', 'Glass', 'Polish', 'Airing', 'Quick wash'])
})
