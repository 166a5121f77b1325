import { beforeEach, describe, expect, it } from 'vitest'
import { shelfShop, stock } from '../services/shelf/shelfShop.ts'
import { type Api, firstRun, makeApi } from './makeApi.ts'

let api: Api
beforeEach(async () => {
  api = await makeApi('2026-04-15T12:00:00Z')
})

describe('the shelf over the api', () => {
  it('is empty and sound in a shop that counts nothing yet', async () => {
    await api.mutate('shop.setUp', firstRun)
    const { data } = await api.query('shelf.closeOfDay')
    expect(data).toMatchObject({
      date: '2026-04-15',
      stepsToConfirm: [],
      products: [],
      orders: [],
      warnings: [],
    })
    const list = await api.query('shelf.list')
    expect(list.data.length).toBeGreaterThan(0)
    for (const item of list.data) expect(item).toMatchObject({ unit: null, onHand: 0 })
    const page = await api.query('shelf.product', { id: list.data[0].id })
    expect(page.data).toMatchObject({ shelf: null, version: 0, advice: null, safety: { version: 0 } })
    expect((await api.query('safety.warnings')).data).toMatchObject({ storage: [], sheets: [] })
  })

  it('names the field of bad input, also what only the domain refuses', async () => {
    const shop = await shelfShop(api.desk)
    const [lotId] = await stock(api.desk, shop.coating, shop.sizes.coating, 1)
    const bottle = { productId: shop.coating, lotId }
    for (const [path, input, field] of [
      ['shelf.count', { ...bottle, counted: 'much', reason: 'x' }, 'counted'],
      ['shelf.count', { ...bottle, counted: 5 }, 'reason'],
      ['shelf.waste', { ...bottle, amount: 51, discard: 'spilt', reason: '' }, 'amount'],
      [
        'shelf.receive',
        {
          lines: [
            {
              productId: shop.coating,
              sizeId: shop.sizes.coating,
              containers: 0,
              expiresOn: null,
              batch: null,
              costMinor: 0,
            },
          ],
        },
        'lines.0.containers',
      ],
      [
        'shelf.receive',
        {
          lines: [
            {
              productId: shop.coating,
              sizeId: shop.sizes.topper,
              containers: 1,
              expiresOn: null,
              batch: null,
              costMinor: 0,
            },
          ],
        },
        'lines.0.sizeId',
      ],
      ['orders.propose', { lines: [{ offerId: shop.offers.coating, packs: 0 }] }, 'lines.0.packs'],
      [
        'mail.save',
        {
          host: 'mail.example.com',
          port: 70_000,
          security: 'tls',
          user: null,
          fromName: 'A',
          fromAddress: 'a@example.com',
        },
        'port',
      ],
    ] as const) {
      const answer = await api.mutate(path, input)
      const status = answer.fault?.reason === 'missing' ? 404 : 400
      expect([path, answer.status, answer.fault?.field]).toEqual([path, status, field])
      expect(answer.message).not.toBe('')
    }
    expect(await api.desk.store.read.stockMove.count()).toBe(1)
  })

  it('plays a close of day: a count, a scan, an order proposed, sent by paper and taken in', async () => {
    const shop = await shelfShop(api.desk)
    const [lotId] = await stock(api.desk, shop.coating, shop.sizes.coating, 1)
    await api.mutate('shelf.learnCode', {
      code: '2006381333933',
      productId: shop.coating,
      sizeId: shop.sizes.coating,
    })
    expect((await api.query('shelf.scan', { code: '2006381333933' })).data).toMatchObject({
      kind: 'known',
      lots: [{ id: lotId, next: true }],
    })
    await api.mutate('shelf.count', { productId: shop.coating, lotId, counted: 12, reason: 'looked low' })
    const [order] = (
      await api.mutate('orders.propose', { lines: [{ offerId: shop.offers.coating, packs: 2 }] })
    ).data
    const sent = (await api.mutate('orders.send', { id: order.id, version: order.version, how: 'paper' }))
      .data
    expect(sent).toMatchObject({ sent: true, order: { status: 'sent' } })
    const line = sent.order.lines[0]
    const taken = await api.mutate('orders.receive', {
      id: order.id,
      version: sent.order.version,
      lines: [{ lineId: line.id, containers: 2, expiresOn: '2027-06-30', batch: 'B-9' }],
    })
    expect(taken.data).toMatchObject({
      order: { status: 'received' },
      received: { lots: [{ number: 2 }, { number: 3 }] },
    })
    const page = (await api.query('shelf.product', { id: shop.coating })).data
    expect(page).toMatchObject({ onHand: 112, advice: { kind: 'enough' } })
    expect(page.ledger.moves.map((move: { kind: string }) => move.kind)).toEqual([
      'receipt',
      'receipt',
      'count',
      'receipt',
    ])
    expect((await api.query('shelf.closeOfDay')).data.done).toEqual({
      stepsConfirmed: 0,
      counts: 1,
      ordersSent: 1,
    })
  })
})
