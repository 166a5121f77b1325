import { beforeEach, describe, expect, it } from 'vitest'
import { instantOf } from '../../../main/domain/calendar/instants.ts'
import { fillDemo } from '../../../main/services/demo/index.ts'
import { closeOfDay } from '../../../main/services/shelf/closeOfDay.ts'
import { shelfProduct } from '../../../main/services/shelf/productPage.ts'
import { countBottle, takeStock } from '../../../main/services/shelf/stockChanges.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, type ShelfShop, shelfShop, stock, workUntil } from './shelfShop.ts'

let desk: TestDesk
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
})

describe('a shelf nobody has counted', () => {
  it('is not called lasting: it is to be counted first', async () => {
    const shop = await shelfShop(desk)
    const of = async (id: string) => (await closeOfDay(desk)).products.find(each => each.id === id)!.advice
    expect(await of(shop.cloths)).toMatchObject({
      kind: 'check',
      packs: 0,
      words: [
        'Nothing of Lint-free cloths has been counted yet: receive what stands on the shelf, and it can be looked ahead.',
      ],
    })
    // Used up is not the same as never counted.
    const [lotId] = await stock(desk, shop.cloths, shop.sizes.cloths, 1)
    await takeStock(desk, { productId: shop.cloths, lotId: lotId!, amount: 50, reason: 'all used' })
    expect((await of(shop.cloths)).words[0]).not.toContain('has been counted yet')
  })
})

describe('one bottle', () => {
  const amounts = async (shop: ShelfShop) => {
    const page = await shelfProduct(desk, { id: shop.coating })
    return { page: page.usable, numbers: page.advice!.facts!.onHand, words: page.advice!.words.join(' ') }
  }

  it('shows one amount, with what today’s steps take of it beside', async () => {
    const shop = await shelfShop(desk)
    await stock(desk, shop.coating, shop.sizes.coating, 4)
    await workUntil(desk, await book(desk, shop), 2)
    const { page, numbers, words } = await amounts(shop)
    expect([page, numbers]).toEqual([200, 200])
    // The first layer is laid (30 ml), the second due today (20 ml).
    expect(words).toMatch(/200 ml on the shelf, less (30|50) ml for the steps of today/)
  })

  it('counted before its steps are confirmed says that they take it off again', async () => {
    const shop = await shelfShop(desk)
    const [lotId] = await stock(desk, shop.coating, shop.sizes.coating, 1)
    const count = { productId: shop.coating, lotId: lotId!, counted: 20, reason: 'close of day' }
    await workUntil(desk, await book(desk, shop), 2)
    expect((await countBottle(desk, count)).words[0]).toContain('are still to be confirmed')
    const [topper] = await stock(desk, shop.topper, shop.sizes.topper, 1)
    const other = await countBottle(desk, { ...count, productId: shop.topper, lotId: topper! })
    expect(other.words[0]).not.toContain('still to be confirmed')
  })
})

describe('projection and advice', () => {
  /** The products whose projection and advice say different things. */
  const contradictions = async () => {
    const { products } = await closeOfDay(desk)
    return products.flatMap(({ name, projection, advice }) => {
      const { runsDry, deliveries } = projection
      const within = projection.days.filter(day => day.open).slice(0, advice.facts?.coverDays ?? 0)
      const hit = runsDry?.jobId && within.some(day => day.date === runsDry.date)
      return hit && deliveries.length === 0 && advice.kind !== 'order' && advice.kind !== 'check'
        ? [name]
        : []
    })
  }

  it('agree when a count has put the ledger right', async () => {
    await fillDemo(desk)
    expect(await contradictions()).toEqual([])
    for (const { id, lots } of (await closeOfDay(desk)).products) {
      const kept = lots.filter(lot => lot.onHand > 0)
      // Each shelf is found to hold half of what it should.
      for (const lot of kept.slice(0, Math.ceil(kept.length / 2)))
        await countBottle(desk, {
          productId: id,
          lotId: lot.id,
          counted: Math.floor(lot.onHand / 3),
          reason: 'counted',
        })
      expect([id, await contradictions()]).toEqual([id, []])
    }
  })

  it('lead with one sentence in the words of a shop; those of a textbook stand in the numbers behind', async () => {
    await fillDemo(desk)
    const { products } = await closeOfDay(desk)
    const leading = products.map(({ advice }) => advice.words[0]!)
    expect(new Set(products.map(({ advice }) => advice.kind)).size).toBeGreaterThan(1)
    expect(leading.some(words => words.startsWith('Order '))).toBe(true)
    expect(
      leading.filter(words => /order point|unforeseen|safety stock|textbook|service level/i.test(words)),
    ).toEqual([])
  })

  it('rest on the same use: order points made for another are worked out anew', async () => {
    const shop = await shelfShop(desk)
    const [lotId] = await stock(desk, shop.topper, shop.sizes.topper, 4)
    const takeDaily = async (days: number, amount: number) => {
      for (let day = 0; day < days; day++) {
        desk.setNow(instantOf(desk.now() + 1440).toString())
        await takeStock(desk, { productId: shop.topper, lotId: lotId!, amount, reason: 'a walk-in' })
      }
    }
    const planned = async () => {
      await closeOfDay(desk)
      return desk.store.read.shelfPlan.findUniqueOrThrow({ where: { productId: shop.topper } })
    }
    await takeDaily(6, 4)
    const first = await planned()
    // A day later, with as much used as ever, the plan is good for its week.
    await takeDaily(1, 4)
    expect((await planned()).plannedOn).toBe(first.plannedOn)
    await takeDaily(2, 150)
    expect((await planned()).plannedOn).toBe('2026-04-24')
    expect(await contradictions()).toEqual([])
  })
})
