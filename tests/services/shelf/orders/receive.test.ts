import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { saveOrder } from '../../../../main/services/shelf/orders/draft.ts'
import { getOrder } from '../../../../main/services/shelf/orders/orderViews.ts'
import { promiseOrder, receiveOrder } from '../../../../main/services/shelf/orders/receive.ts'
import { chaseOrder, sendOrder } from '../../../../main/services/shelf/orders/send.ts'
import { listSuppliers } from '../../../../main/services/shelf/suppliers.ts'
import { type OrderDesk, orderDesk } from './orderDesk.ts'

let at: OrderDesk
let desk: OrderDesk['desk']
let shop: OrderDesk['shop']
let mail: OrderDesk['mail']
beforeEach(async () => {
  at = await orderDesk()
  ;({ desk, shop, mail } = at)
})
afterEach(() => at.close())

const draft = (packs?: number) => at.draft(packs)

describe('a delivery', () => {
  it('comes in parts: each costs its share, together to the minor unit, carriage too', async () => {
    const order = await saveOrder(desk, {
      supplierId: shop.supplier,
      note: '',
      lines: [
        // 3 packs at 33.33: 99.99 in all, 33.33 each; and 7 at 10.01.
        { offerId: shop.offers.coating, packs: 3, packPriceMinor: 3_333 },
        { offerId: shop.offers.topper, packs: 7, packPriceMinor: 1_001 },
      ],
    })
    const { order: sent } = await sendOrder(desk, { id: order.id, version: order.version, how: 'paper' })
    const [two, veil] = sent.lines
    const first = await receiveOrder(desk, {
      id: sent.id,
      version: sent.version,
      lines: [{ lineId: two!.id, containers: 2, expiresOn: '2027-05-01', batch: 'B-77' }],
    })
    expect(first.order).toMatchObject({
      status: 'partly',
      lines: [{ openContainers: 1 }, { openContainers: 7 }],
    })
    expect(first.received.lots).toHaveLength(2)
    await expect(
      receiveOrder(desk, {
        id: sent.id,
        version: first.order.version,
        lines: [{ lineId: two!.id, containers: 2, expiresOn: null, batch: null }],
      }),
    ).rejects.toMatchObject({ field: 'lines.0.containers', message: expect.stringContaining('1 are open') })
    // Each of the two would fit what is open, together they do not.
    const one = { lineId: two!.id, containers: 1, expiresOn: null, batch: null }
    await expect(
      receiveOrder(desk, { id: sent.id, version: first.order.version, lines: [one, one] }),
    ).rejects.toMatchObject({ code: 'line-twice', field: 'lines.1.lineId' })
    const rest = await receiveOrder(desk, {
      id: sent.id,
      version: first.order.version,
      lines: [
        { lineId: two!.id, containers: 1, expiresOn: null, batch: null },
        { lineId: veil!.id, containers: 7, expiresOn: null, batch: null },
      ],
    })
    expect(rest.order.status).toBe('received')
    const receipts = await desk.store.read.stockMove.findMany({ where: { kind: 'receipt' } })
    expect(receipts).toHaveLength(10)
    expect(receipts.reduce((sum, move) => sum + move.costMinor!, 0)).toBe(3 * 3_333 + 7 * 1_001 + 900)
    expect(await desk.store.read.lot.findFirst({ where: { batch: 'B-77' } })).toMatchObject({
      expiresOn: '2027-05-01',
      supplierId: shop.supplier,
      orderLineId: two!.id,
    })
  })

  it('is late after the day it was due, is asked after by letter, and gets a new day', async () => {
    const order = await draft()
    await sendOrder(desk, { id: order.id, version: order.version, how: 'paper' })
    desk.setNow('2026-04-20T21:00:00Z')
    expect((await getOrder(desk, { id: order.id })).late).toBeNull()
    desk.setNow('2026-04-23T13:00:00Z')
    const late = await getOrder(desk, { id: order.id })
    expect(late.late).toMatchObject({ days: 3, words: expect.stringContaining('3 working days late') })
    const { sent, words, order: asked } = await chaseOrder(desk, late)
    expect([sent, words]).toEqual([true, 'Asked orders@carrow.example.com after order 1.'])
    const text = mail.letters[0]!.parts[0]!.bytes.toString('utf8')
    expect(text).toContain('- 3 × 50 ml Ovrel Two')
    expect(text).toContain('It was expected on Monday 20 April 2026.')
    expect((await getOrder(desk, { id: order.id })).late!.words).toContain('asked after it today')
    const promised = await promiseOrder(desk, {
      id: order.id,
      version: asked.version,
      promisedOn: '2026-04-27',
    })
    expect(promised.late).toBeNull()
    expect(promised.expectedOn).toBe('2026-04-27')
  })

  it('teaches how long its supplier takes, from the third delivery on', async () => {
    for (const [sentOn, cameOn] of [
      ['2026-04-15', '2026-04-20'],
      ['2026-04-22', '2026-04-28'],
      ['2026-04-29', '2026-05-06'],
    ]) {
      expect((await listSuppliers(desk))[0]!.learnedLead).toBeNull()
      desk.setNow(`${sentOn}T13:00:00Z`)
      const order = await draft(1)
      const { order: sent } = await sendOrder(desk, { id: order.id, version: order.version, how: 'paper' })
      desk.setNow(`${cameOn}T13:00:00Z`)
      await receiveOrder(desk, {
        id: sent.id,
        version: sent.version,
        lines: [{ lineId: sent.lines[0]!.id, containers: 1, expiresOn: null, batch: null }],
      })
    }
    // 3, 4 and 5 working days.
    expect((await listSuppliers(desk))[0]!.learnedLead).toMatchObject({
      meanDays: 4,
      sdDays: 1,
      deliveries: 3,
    })
  })
})
