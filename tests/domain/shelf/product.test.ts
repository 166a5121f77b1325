import { describe, expect, it } from 'vitest'
import { checkProduct, compareSizes, labelError } from '../../../main/domain/shelf/index.ts'
import { veilTen } from './veilTen.ts'

describe('a product', () => {
  it.each([
    [{ name: ' ' }, 'name-missing'],
    [{ densityGPerMl: 12 }, 'density-bad'],
    [{ lifeAfterOpeningDays: 0 }, 'life-bad'],
    [{ storage: { leastC: 25, mostC: 5 } }, 'storage-backwards'],
  ])('is refused with %j', (part, code) => {
    expect(() => checkProduct({ ...veilTen, ...part })).toThrow(expect.objectContaining({ code }))
    expect(() => checkProduct(veilTen)).not.toThrow()
  })

  it('is refused at the field that is wrong, and kept at any range of temperatures but one that is none', () => {
    const stored = (leastC: number, mostC: number) => () =>
      checkProduct({ ...veilTen, storage: { leastC, mostC } })
    expect(stored(25, 5)).toThrow(
      expect.objectContaining({
        field: 'storage',
        message: 'Kept between 25 °C and 5 °C is no range; give the lower temperature first.',
      }),
    )
    expect(stored(5, 5)).toThrow(expect.objectContaining({ code: 'storage-backwards' }))
    expect(stored(5, 6)).not.toThrow()
    expect(() => checkProduct({ ...veilTen, storage: null })).not.toThrow()
  })

  it('keeps the label’s size and the measured one apart', () => {
    // 16 fl oz on the label, 500 ml found in the bottle (common practice, no source).
    const size = { id: 'z', productId: 'p', labelCenti: 47_318, measuredCenti: 50_000, gtins: [] }
    expect(labelError(size)).toBeCloseTo(0.0567, 4)
    const litre = { ...size, id: 'litre', labelCenti: 100_000, measuredCenti: null }
    const [cheap, dear] = compareSizes([
      { size: litre, priceMinor: 4100 },
      { size, priceMinor: 2000 },
    ])
    expect(cheap).toMatchObject({
      sizeId: 'z',
      per100Minor: 400,
      per100ByLabelMinor: 423,
      basis: 'measured',
      dearerBy: 0,
    })
    expect(dear).toMatchObject({ sizeId: 'litre', per100Minor: 410, basis: 'label' })
    expect(dear!.dearerBy).toBeCloseTo(0.025, 9)
    expect(() => compareSizes([{ size, priceMinor: 0.5 }])).toThrow(/not a price/)
  })
})
