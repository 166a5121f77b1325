import { expect, test } from 'vitest'
import { labelSize } from '../../../main/domain/measure/labelSize.ts'

// NIST SP 811, appendix B.8: a US fluid ounce is 29.573 53 mL.
test('Sixteen fluid ounces sold as half a litre', () => {
  const size = labelSize(16, 500)
  expect(size.exactMl).toBeCloseTo(473.17648, 4)
  expect(size.missingMl).toBeCloseTo(26.82352, 4)
  expect(size.missingPercentOfSold).toBeCloseTo(5.3647, 4)
  expect(size.differencePercent).toBeCloseTo(5.6688, 4)
})

test('A size of nothing, or of no end, is refused', () => {
  expect(() => labelSize(0, 500)).toThrow(
    expect.objectContaining({ code: 'size-not-positive', field: 'labelFlOz' }),
  )
  expect(() => labelSize(16, Number.POSITIVE_INFINITY)).toThrow(
    expect.objectContaining({ field: 'soldAsMl' }),
  )
})
