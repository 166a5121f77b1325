import { expect, test } from 'vitest'
import { checkRate, taxInGross, taxOfLines, taxOnNet } from '../../../main/domain/money/tax.ts'

test('On top of a net amount and inside a gross one', () => {
  expect(taxOnNet(10_000, 8.25)).toEqual({ netMinor: 10_000, taxMinor: 825 })
  expect(taxInGross(11_900, 19)).toEqual({ netMinor: 10_000, taxMinor: 1_900 })
  expect(taxInGross(100, 0)).toEqual({ netMinor: 100, taxMinor: 0 })
})

test('Once on the sum and line by line may differ', () => {
  // 19 percent of 0.99 is 0.1881; of 0.33 three times 0.0627.
  expect(taxOfLines([33, 33, 33], 19, 'document')).toEqual({ netMinor: 99, taxMinor: 19 })
  expect(taxOfLines([33, 33, 33], 19, 'line')).toEqual({ netMinor: 99, taxMinor: 18 })
})

test('A rate below zero is refused', () => {
  expect(() => checkRate('-1', 'lines.0.ratePercent')).toThrow(
    expect.objectContaining({ code: 'rate-negative', field: 'lines.0.ratePercent' }),
  )
})
