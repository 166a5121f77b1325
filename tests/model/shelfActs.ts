import fc from 'fast-check'
import { receiveGoods } from '../../main/services/shelf/receive.ts'
import { countBottle, takeStock, wasteStock } from '../../main/services/shelf/stockChanges.ts'
import type { Act, Ids } from './act.ts'
import { unless } from './shopModel.ts'

/** What a bottle holds when it comes. */
const full = 5_000

const receive = (containers: number): Act => ({
  words: `${containers} bottles come`,
  plan: model => unless(model, null, () => model.bottles.push(...new Array<number>(containers).fill(full))),
  async really(desk, { shop, bottles }) {
    const line = { productId: shop.coating, sizeId: shop.size, containers, expiresOn: null, batch: null }
    const { lots } = await receiveGoods(desk, { lines: [{ ...line, costMinor: 4_800 }] })
    bottles.push(...lots.map(lot => lot.id))
  },
})

interface OnBottle {
  words: string
  index: number
  centi: number
  /** What is in it after, of what was. */
  after: (centi: number) => number
  really: (
    desk: Parameters<Act['really']>[0],
    bottle: { productId: string; lotId: string },
  ) => Promise<unknown>
}

/** Nobody takes more out of a bottle than is in it. */
const onBottle = ({ words, index, centi, after, really }: OnBottle): Act => ({
  words: `${words} ${centi / 100} ml, bottle ${index}`,
  plan(model, seen) {
    if (seen.bottles.length === 0) return null
    const at = index % seen.bottles.length
    const left = after(model.bottles[at]!)
    return unless(model, left < 0 ? 'beyond-stock' : null, () => {
      model.bottles[at] = left
    })
  },
  really: (desk, ids: Ids, seen) =>
    really(desk, { productId: ids.shop.coating, lotId: ids.bottles[index % seen.bottles.length]! }),
})

const use = (index: number, centi: number) =>
  onBottle({
    words: 'use',
    index,
    centi,
    after: there => there - centi,
    really: (desk, bottle) => takeStock(desk, { ...bottle, amount: centi / 100, reason: 'test panel' }),
  })

const spill = (index: number, centi: number) =>
  onBottle({
    words: 'spill',
    index,
    centi,
    after: there => there - centi,
    really: (desk, bottle) =>
      wasteStock(desk, { ...bottle, amount: centi / 100, discard: 'spilt', reason: '' }),
  })

const count = (index: number, centi: number) =>
  onBottle({
    words: 'count',
    index,
    centi,
    after: () => centi,
    really: (desk, bottle) => countBottle(desk, { ...bottle, counted: centi / 100, reason: 'counted' }),
  })

const some = fc.tuple(fc.nat(9), fc.integer({ min: 1, max: 3_000 }))

export const shelfActs: fc.Arbitrary<Act>[] = [
  fc.integer({ min: 1, max: 3 }).map(receive),
  some.map(each => use(...each)),
  some.map(each => use(...each)),
  some.map(each => spill(...each)),
  some.map(each => count(...each)),
]
