import fc from 'fast-check'
import { expect, test } from 'vitest'
import { chargesOf, type Sale, saleMinor, sharedOnce } from '../../../main/domain/money/sale.ts'

const wash = { id: 'wash', name: 'Hand wash', priceMinor: 12_000 }
const layers = { id: 'layers', name: 'Two layers', priceMinor: 129_900 }
const kit = { key: 'kit', name: 'Care kit', priceMinor: 4_500, taxKey: '' }
const sale = (more: Partial<Sale> = {}): Sale => ({
  currency: 'USD',
  treatments: [wash, layers],
  shared: [],
  packages: [],
  extras: [],
  discounts: [],
  ...more,
})
const total = (given: Sale) => saleMinor(given.treatments, chargesOf(given), given.currency)

test('A wash that two treatments share comes off the one where it is worth less', () => {
  // 60 of 60 minutes of 120.00, and 60 of 270 minutes of 1,299.00, which is 288.67.
  const shared = sharedOnce(
    [wash, layers],
    [
      {
        name: 'Wash',
        minutesIn: new Map([
          [0, 60],
          [1, 60],
        ]),
      },
      { name: 'Layer', minutesIn: new Map([[1, 210]]) },
    ],
  )
  expect(shared).toEqual([
    { treatmentId: 'wash', words: 'Wash is charged with Two layers', amountMinor: 12_000 },
  ])
  expect(total(sale({ shared }))).toBe(129_900)
})

test('Package, extras and discounts one after the other, worked by hand', () => {
  const given = sale({
    packages: [{ key: 'p', name: 'Fresh and sealed', treatmentIds: ['wash', 'layers'], percent: '10' }],
    extras: [{ extra: kit, quantity: '2' }],
    discounts: [
      { treatmentId: null, amountMinor: null, percent: '5', reason: 'Second car' },
      { treatmentId: 'wash', amountMinor: 800, percent: null, reason: 'Late last time' },
    ],
  })
  // 1,419.00 less 10 % is 1,277.10; less 8.00, and 90.00 on top: 1,359.10; less 5 %, 67.96, is 1,291.14 (half up).
  expect(total(given)).toBe(129_114)
  expect(chargesOf(given).map(each => [each.kind, each.treatmentId, each.amountMinor])).toEqual([
    ['extra', null, 4_500],
    ['package', 'wash', 1_200],
    ['package', 'layers', 12_990],
    ['discount', 'wash', 800],
    ['discount', null, 6_796],
  ])
})

test('Of two packages the one that saves more is taken, and one that is not whole is none', () => {
  const pack = (name: string, percent: string, treatmentIds = ['wash', 'layers']) => ({
    key: name,
    name,
    treatmentIds,
    percent,
  })
  const packages = [pack('small', '5'), pack('large', '8'), pack('other', '50', ['wash', 'gone'])]
  expect(new Set(chargesOf(sale({ packages })).map(each => each.words))).toEqual(new Set(['large']))
})

test('Nothing is ever sold for less than nothing, and shared work is never worth more than its treatment', () => {
  const price = fc.integer({ min: 0, max: 1_000_000 })
  const minutes = fc.array(fc.integer({ min: 0, max: 300 }), { minLength: 2, maxLength: 2 })
  fc.assert(
    fc.property(
      price,
      price,
      fc.array(minutes, { maxLength: 6 }),
      fc.integer({ min: 0, max: 100 }),
      (a, b, rows, percent) => {
        const treatments = [
          { ...wash, priceMinor: a },
          { ...layers, priceMinor: b },
        ]
        const steps = rows.map((row, i) => ({
          name: `Step ${i}`,
          minutesIn: new Map(row.flatMap((each, t) => (each > 0 ? [[t, each] as const] : []))),
        }))
        const shared = sharedOnce(treatments, steps)
        for (const { id, priceMinor } of treatments)
          expect(
            shared.filter(each => each.treatmentId === id).reduce((sum, each) => sum + each.amountMinor, 0),
          ).toBeLessThanOrEqual(priceMinor)
        const packages = [{ key: 'p', name: 'P', treatmentIds: ['wash', 'layers'], percent: String(percent) }]
        expect(total(sale({ treatments, shared, packages }))).toBeGreaterThanOrEqual(0)
      },
    ),
  )
})

test('A discount that says nothing, takes nothing, takes too much or is of something else is refused', () => {
  const asked = { treatmentId: null, amountMinor: 100, percent: null, reason: 'friend' }
  for (const [more, code, field] of [
    [{ reason: ' ' }, 'discount-unexplained', 'discounts.0.reason'],
    [{ amountMinor: 0 }, 'discount-nothing', 'discounts.0.amountMinor'],
    [{ amountMinor: null }, 'discount-nothing', 'discounts.0.percent'],
    [{ amountMinor: null, percent: '101' }, 'discount-too-large', 'discounts.0.percent'],
    [{ amountMinor: 141_901 }, 'discount-too-large', 'discounts.0.amountMinor'],
    [{ treatmentId: 'gone' }, 'discount-elsewhere', 'discounts.0.treatmentId'],
  ] as const)
    expect(() => chargesOf(sale({ discounts: [{ ...asked, ...more }] }))).toThrow(
      expect.objectContaining({ code, field }),
    )
})
