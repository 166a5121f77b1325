import { expect, test } from 'vitest'
import { compareSizes } from '../../../main/domain/shelf/unitPrice.ts'

const size = (id: string, labelCenti: number, measuredCenti: number | null) => ({
  id,
  productId: 'polish',
  labelCenti,
  measuredCenti,
  gtins: [],
})

test('A bottle that holds less than it says is compared by what it holds', () => {
  // 25.00 for 500 ml are 5.00 a hundred. 24.00 for a "half litre" of 473 ml are 5.07, though 4.80 by its label.
  const compared = compareSizes([
    { size: size('short', 50_000, 47_300), priceMinor: 2400 },
    { size: size('full', 50_000, null), priceMinor: 2500 },
  ])
  expect(
    compared.map(({ sizeId, per100Minor, basis, per100ByLabelMinor }) => [
      sizeId,
      per100Minor,
      basis,
      per100ByLabelMinor,
    ]),
  ).toEqual([
    ['full', 500, 'label', 500],
    ['short', 507, 'measured', 480],
  ])
  expect(compared.map(({ dearerBy }) => dearerBy)).toEqual([0, expect.closeTo((500 / 473) * 0.96 - 1, 10)])
})

test('What is given away is not dearer than itself', () => {
  expect(compareSizes([{ size: size('sample', 1000, null), priceMinor: 0 }])[0]).toMatchObject({
    per100Minor: 0,
    dearerBy: 0,
  })
})

test('A price that is none is refused by its place', () => {
  expect(() => compareSizes([{ size: size('a', 1000, null), priceMinor: -1 }])).toThrow(
    expect.objectContaining({ code: 'money-bad', field: '0.priceMinor' }),
  )
})
