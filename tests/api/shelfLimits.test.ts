import { beforeEach, describe, expect, it } from 'vitest'
import { instantOf } from '../../main/domain/calendar/instants.ts'
import { book, type ShelfShop, shelfShop, stock, workUntil } from '../services/shelf/shelfShop.ts'
import { type Api, makeApi } from './makeApi.ts'

let api: Api
let shop: ShelfShop
beforeEach(async () => {
  api = await makeApi('2026-04-15T12:00:00Z')
  shop = await shelfShop(api.desk)
})

const refusalOf = async (path: string, input: unknown) => {
  const { status, fault, message } = await api.mutate(path, input)
  return { status, field: fault?.field, words: message }
}

describe('what is not there', () => {
  it('is said in words by its field, never as a fault of the server', async () => {
    const line = {
      productId: shop.coating,
      sizeId: shop.sizes.coating,
      containers: 1,
      expiresOn: null,
      batch: null,
      costMinor: 0,
    }
    const recipe = { stage: 'coat', stepName: 'Layer', sizeClass: 'medium', amount: 5, spread: 1 }
    for (const [path, input, field] of [
      ['shelf.learnCode', { code: '2006381333933', productId: 'gone' }, 'productId'],
      ['shelf.receive', { lines: [line], supplierId: 'gone' }, 'supplierId'],
      ['shelf.receive', { lines: [{ ...line, productId: 'gone' }] }, 'productId'],
      ['shelf.receive', { lines: [{ ...line, sizeId: 'gone' }] }, 'lines.0.sizeId'],
      ['shelf.useAsRecipe', { ...recipe, productId: 'gone' }, 'productId'],
      ['orders.save', { supplierId: 'gone', note: '', lines: [] }, 'supplierId'],
      ['orders.cancel', { id: 'gone', version: 1, reason: 'x' }, 'id'],
      ['safety.save', { ...noSafety, productId: 'gone' }, 'productId'],
    ] as const)
      expect([path, await refusalOf(path, input)]).toEqual([
        path,
        { status: 404, field, words: expect.stringContaining(' ') },
      ])
    expect(await api.desk.store.read.productCode.count()).toBe(0)
    expect(await api.desk.store.read.lot.count()).toBe(0)
  })
})

const noSafety = {
  revisedOn: null,
  hazardCodes: null,
  precautionaryCodes: null,
  signalWord: null,
  protection: null,
  storageGroup: null,
  unNumber: null,
  ph: null,
  maker: '',
  note: '',
}

describe('an amount', () => {
  it.each([1e8, 4e12, 1e308, 100_001, -1])(
    'of %d cannot be drawn, and the close of day stays',
    async amount => {
      await stock(api.desk, shop.coating, shop.sizes.coating, 2)
      const job = await workUntil(api.desk, await book(api.desk, shop), 2)
      const draw = { productId: shop.coating, lotId: null, how: 'corrected', foundMore: true }
      const confirm = { jobId: job.jobId, position: 2, version: job.version }
      const refused = await refusalOf('shelf.confirmDraws', { ...confirm, draws: [{ ...draw, amount }] })
      expect(refused).toMatchObject({ status: 400, field: 'draws.0.amount' })
      expect((await api.query('shelf.closeOfDay')).data.stepsToConfirm).toHaveLength(1)
    },
  )

  it('at the limit is taken, and the close of day is still worked out', async () => {
    await stock(api.desk, shop.coating, shop.sizes.coating, 2)
    const job = await workUntil(api.desk, await book(api.desk, shop), 2)
    const draw = { productId: shop.coating, lotId: null, amount: 100_000, how: 'corrected', foundMore: true }
    const { status } = await api.mutate('shelf.confirmDraws', {
      jobId: job.jobId,
      position: 2,
      version: job.version,
      draws: [draw],
    })
    expect(status).toBe(200)
    api.desk.setNow(instantOf(api.desk.now() + 14 * 1440).toString())
    const { status: after, data } = await api.query('shelf.closeOfDay')
    expect([after, data.products.length]).toEqual([200, 3])
  })
})

describe('a delivery', () => {
  it.each([-1, 0, 4, 1.5])(
    'of which %d containers came is refused whole: nothing of it is booked in',
    async containers => {
      const [order] = (
        await api.mutate('orders.propose', {
          lines: [
            { offerId: shop.offers.coating, packs: 3 },
            { offerId: shop.offers.topper, packs: 1 },
          ],
        })
      ).data
      const { data } = await api.mutate('orders.send', { id: order.id, version: order.version, how: 'paper' })
      const [coating, topper] = data.order.lines
      const came = (lineId: string, count: number) => ({
        lineId,
        containers: count,
        expiresOn: null,
        batch: null,
      })
      const refused = await refusalOf('orders.receive', {
        id: order.id,
        version: data.order.version,
        lines: [came(topper.id, 1), came(coating.id, containers)],
      })
      expect(refused).toMatchObject({ status: 400, field: 'lines.1.containers' })
      expect(await api.desk.store.read.lot.count()).toBe(0)
      expect((await api.query('orders.get', { id: order.id })).data.status).toBe('sent')
    },
  )
})
