import { expect, test } from 'vitest'
import { checkRate, checkRates, shortRate, taxInGross, taxOnNet } from '../../../main/domain/money/tax.ts'

test('On top of a net amount and inside a gross one', () => {
  expect(taxOnNet(10_000, 8.25)).toEqual({ netMinor: 10_000, taxMinor: 825 })
  expect(taxInGross(11_900, 19)).toEqual({ netMinor: 10_000, taxMinor: 1_900 })
  expect(taxInGross(100, 0)).toEqual({ netMinor: 100, taxMinor: 0 })
})

test('A rate is written as short as it can be', () => {
  expect(['19', '19.00', 19, '8.250', '0.0'].map(shortRate)).toEqual(['19', '19', '19', '8.25', '0'])
})

// EN 16931-1 BR-S-05, BR-Z-05, BR-E-05 and BR-O-05: the rate of each category.
test('Rates that no papers could be made with are refused, each at its field', () => {
  const rate = { key: 'a', name: 'Sales tax', percent: '8.25', category: 'S' as const }
  checkRates([rate, { ...rate, key: 'b', name: 'No tax', percent: '0', category: 'Z' }], 'taxes')
  for (const [rates, code, field] of [
    [[], 'rates-missing', 'taxes'],
    [[{ ...rate, name: ' ' }], 'rate-unnamed', 'taxes.0.name'],
    [[{ ...rate, percent: '-1' }], 'rate-negative', 'taxes.0.percent'],
    [[{ ...rate, percent: '100.01' }], 'rate-high', 'taxes.0.percent'],
    [[{ ...rate, percent: '0' }], 'rate-category', 'taxes.0.percent'],
    [[{ ...rate, category: 'E' as const }], 'rate-category', 'taxes.0.percent'],
    [[rate, rate], 'rate-twice', 'taxes.1.name'],
  ] as const)
    expect(() => checkRates(rates, 'taxes')).toThrow(expect.objectContaining({ code, field }))
})

test('A rate below zero is refused', () => {
  expect(() => checkRate('-1', 'lines.0.ratePercent')).toThrow(
    expect.objectContaining({ code: 'rate-negative', field: 'lines.0.ratePercent' }),
  )
})
