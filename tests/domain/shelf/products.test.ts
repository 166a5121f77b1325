import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  checkOffer,
  checkProduct,
  compareSizes,
  contentByWeight,
  labelError,
  receiveGoods,
} from '../../../main/domain/shelf/index.ts'
import type { ShelfProduct } from '../../../main/domain/shelf/product.ts'

const product: ShelfProduct = {
  id: 'p',
  name: 'Veil Ten',
  kind: 'coating',
  unit: 'ml',
  densityGPerMl: 0.92,
  lifeAfterOpeningDays: 90,
  storage: { leastC: 5, mostC: 25 },
}

describe('a product', () => {
  it.each([
    [{ name: ' ' }, 'name-missing'],
    [{ densityGPerMl: 12 }, 'density-bad'],
    [{ lifeAfterOpeningDays: 0 }, 'life-bad'],
    [{ storage: { leastC: 25, mostC: 5 } }, 'storage-backwards'],
  ])('is refused with %j', (part, code) => {
    expect(() => checkProduct({ ...product, ...part })).toThrow(expect.objectContaining({ code }))
    expect(() => checkProduct(product)).not.toThrow()
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

describe('weighing', () => {
  it('turns grams into millilitres by density, and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.6, max: 2, noNaN: true }),
        fc.integer({ min: 0, max: 100_000 }),
        (densityGPerMl, centi) => {
          const grams = (centi / 100) * densityGPerMl
          const weighed = { unit: 'ml' as const, densityGPerMl }
          expect(contentByWeight(grams + 42, 42, weighed)).toBe(centi)
        },
      ),
    )
    expect(contentByWeight(500, 460.5, { unit: 'g', densityGPerMl: null })).toBe(3950)
  })

  it.each([
    [() => contentByWeight(100, -1, product), 'weight-bad'],
    [() => contentByWeight(100, 90, { unit: 'ml', densityGPerMl: null }), 'density-missing'],
    [() => contentByWeight(100, 90, { unit: 'piece', densityGPerMl: 1 }), 'not-weighed'],
    [() => contentByWeight(40, 42, product), 'lighter-than-empty'],
  ])('refuses what makes no sense: %#', (weigh, code) => {
    expect(weigh).toThrow(expect.objectContaining({ code }))
  })
})

describe('a delivery', () => {
  const line = {
    productId: 'p',
    sizeId: 'z',
    containers: 3,
    contentCenti: 5000,
    goodsMinor: 10_000,
    batch: 'B1',
    expiresOn: '2027-01-31',
  }
  const when = { date: '2026-04-15', at: 1, by: 'anna' }

  it('becomes a lot for each container, and costs what was paid to the minor unit', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            containers: fc.integer({ min: 1, max: 12 }),
            goodsMinor: fc.integer({ min: 0, max: 99_999 }),
          }),
          { minLength: 1, maxLength: 5 },
        ),
        fc.integer({ min: 0, max: 5000 }),
        (lines, carriage) => {
          const { lots, moves } = receiveGoods(
            lines.map(part => ({ ...line, ...part })),
            carriage,
            when,
          )
          const paid = lines.reduce((sum, part) => sum + part.goodsMinor, carriage)
          expect(moves.reduce((sum, move) => sum + move.costMinor!, 0)).toBe(paid)
          expect(lots).toHaveLength(lines.reduce((sum, part) => sum + part.containers, 0))
          expect(moves).toHaveLength(lots.length)
        },
      ),
    )
    expect(receiveGoods([line], 1, when).moves.map(move => move.costMinor)).toEqual([3334, 3334, 3333])
  })

  it('is refused when it is past its date, or nothing', () => {
    expect(() => receiveGoods([{ ...line, expiresOn: '2026-04-14' }], 0, when)).toThrow(/before it came/)
    expect(() => receiveGoods([{ ...line, containers: 0 }], 0, when)).toThrow(/1 to 1000/)
    expect(() => receiveGoods([], 0, when)).toThrow(/Say what came/)
  })

  it('comes by an offer that holds together', () => {
    const offer = {
      supplierId: 's',
      productId: 'p',
      sizeId: 'z',
      packCenti: 5000,
      containersPerPack: 1,
      breaks: [
        { fromPacks: 1, packPriceMinor: 2000 },
        { fromPacks: 6, packPriceMinor: 1800 },
      ],
      shelfLifeDays: 360,
    }
    expect(() => checkOffer(offer)).not.toThrow()
    expect(() => checkOffer({ ...offer, packCenti: 0 })).toThrow(/what one pack holds/)
    expect(() => checkOffer({ ...offer, breaks: offer.breaks.slice(1) })).toThrow(/first price is for 1 pack/)
    expect(() => checkOffer({ ...offer, breaks: [...offer.breaks, offer.breaks[1]!] })).toThrow(/sort them/)
  })
})
