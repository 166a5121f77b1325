import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkOffer, receiveGoods } from '../../../main/domain/shelf/index.ts'

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
