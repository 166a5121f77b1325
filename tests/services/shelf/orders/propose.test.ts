import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { supplierInput } from '../../../../main/services/shelf/inputs.ts'
import { cancelOrder, saveOrder } from '../../../../main/services/shelf/orders/draft.ts'
import { draftMessage } from '../../../../main/services/shelf/orders/letter.ts'
import { listOrders } from '../../../../main/services/shelf/orders/orderViews.ts'
import { proposeDrafts } from '../../../../main/services/shelf/orders/propose.ts'
import { receiveOrder } from '../../../../main/services/shelf/orders/receive.ts'
import { sendOrder } from '../../../../main/services/shelf/orders/send.ts'
import { saveOffer } from '../../../../main/services/shelf/supplierOffers.ts'
import { listSuppliers, saveSupplier } from '../../../../main/services/shelf/suppliers.ts'
import { readPdf } from '../../../documents/readPdf.ts'
import { startMailServer } from '../../../outbox/mailServer.ts'
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

describe('an order', () => {
  it('is proposed one a supplier, and a second proposal goes onto the draft that is there', async () => {
    const other = await saveSupplier(
      desk,
      supplierInput.parse({
        ...(await listSuppliers(desk))[0]!,
        id: undefined,
        version: undefined,
        name: 'Dunvarrow Chemicals',
        email: null,
      }),
    )
    const { id: offerId } = await saveOffer(desk, {
      supplierId: other.id,
      productId: shop.cloths,
      sizeId: shop.sizes.cloths,
      article: '',
      containersPerPack: 4,
      breaks: [
        { fromPacks: 1, packPriceMinor: 2_000 },
        { fromPacks: 5, packPriceMinor: 1_700 },
      ],
      shelfLifeDays: null,
      preferred: true,
    })
    const first = await proposeDrafts(desk, {
      lines: [
        { offerId: shop.offers.coating, packs: 2 },
        { offerId, packs: 5 },
      ],
    })
    expect(first.map(order => [order.supplierName, order.lines.length, order.goodsMinor]).sort()).toEqual([
      ['Carrow Supply', 1, 9_600],
      // Five packs are bought at the price from five on.
      ['Dunvarrow Chemicals', 1, 8_500],
    ])
    const [again] = await proposeDrafts(desk, {
      lines: [
        { offerId: shop.offers.topper, packs: 1 },
        { offerId: shop.offers.coating, packs: 4 },
      ],
    })
    expect(again!.id).toBe(first.find(order => order.supplierName === 'Carrow Supply')!.id)
    expect(again!.lines.map(line => [line.productName, line.packs])).toEqual([
      ['Ovrel Veil', 1],
      ['Ovrel Two', 4],
    ])
  })

  it('is edited before it goes: amounts, a price somebody knows better, carriage by what the goods come to', async () => {
    const first = await draft()
    expect([first.goodsMinor, first.carriageMinor, first.totalMinor]).toEqual([14_400, 900, 15_300])
    const line = first.lines[0]!
    const edited = await saveOrder(desk, {
      id: first.id,
      version: first.version,
      supplierId: shop.supplier,
      note: 'Before ten, please.',
      lines: [{ id: line.id, packs: 6, packPriceMinor: 4_500 }],
    })
    // 270.00 is past the 250.00 from which carriage is free.
    expect([edited.goodsMinor, edited.carriageMinor, edited.notes]).toEqual([27_000, 0, []])
    await expect(
      saveOrder(desk, {
        id: first.id,
        version: first.version,
        supplierId: shop.supplier,
        note: '',
        lines: [],
      }),
    ).rejects.toMatchObject({ code: 'stale' })
    await expect(
      saveOrder(desk, {
        id: edited.id,
        version: edited.version,
        supplierId: shop.supplier,
        note: '',
        lines: [{ offerId: shop.offers.coating, packs: 0 }],
      }),
    ).rejects.toMatchObject({ field: 'lines.0.packs' })
  })

  it('goes to the supplier by e-mail with its PDF, once', async () => {
    const order = await draft()
    const {
      sent,
      words,
      order: after,
    } = await sendOrder(desk, { id: order.id, version: order.version, how: 'email' })
    expect([sent, words]).toEqual([true, 'Order 1 went to orders@carrow.example.com.'])
    // Before the cut-off of 14:00 on a Wednesday; three working days on average, one of spread.
    expect(after).toMatchObject({ status: 'sent', sentAt: desk.now(), expectedOn: '2026-04-20' })
    expect(after.lateFromOn! > after.expectedOn!).toBe(true)
    const [letter] = mail.letters
    expect(letter).toMatchObject({ from: 'hello@ashdown.example.com', to: ['orders@carrow.example.com'] })
    const text = letter!.parts[0]!.bytes.toString('utf8')
    expect(text).toContain('- 3 × 50 ml Ovrel Two (C-4800): $144.00')
    expect(text).toContain('together $153.00')
    expect(letter!.parts[1]).toMatchObject({ type: 'application/pdf', name: 'order-1.pdf' })
    const { pages } = await readPdf(letter!.parts[1]!.bytes)
    const printed = pages[0]!.lines.join('\n')
    expect(printed).toContain('Purchase order 1')
    expect(printed).toContain('Wanted by Monday 20 April 2026')
    expect(printed).toMatch(/C-4800\s+Ovrel Two\s+50 ml\s+3\s+48\.00\s+144\.00/)
    await expect(
      sendOrder(desk, { id: order.id, version: after.version, how: 'email' }),
    ).rejects.toMatchObject({
      code: 'not-draft',
    })
    expect(mail.letters).toHaveLength(1)
  })

  it('is sent once by two windows at once', async () => {
    const order = await draft()
    const outcomes = await Promise.allSettled(
      [1, 2].map(() => sendOrder(desk, { id: order.id, version: order.version, how: 'email' })),
    )
    expect(outcomes.map(each => each.status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(mail.letters).toHaveLength(1)
  })

  it('stays a draft where its letter does not go out, with the reason on record', async () => {
    await mail.close()
    const order = await draft()
    const {
      sent,
      words,
      order: after,
    } = await sendOrder(desk, { id: order.id, version: order.version, how: 'email' })
    expect(sent).toBe(false)
    expect(words).toContain('did not go out. 127.0.0.1 does not answer on port')
    expect(after).toMatchObject({
      status: 'draft',
      sentAt: null,
      messages: [{ failure: expect.stringContaining('port') }],
    })
    mail = await startMailServer()
  })

  it('may go by paper, and without an address only so', async () => {
    const [supplier] = await listSuppliers(desk)
    await saveSupplier(desk, supplierInput.parse({ ...supplier, email: null }))
    const order = await draft()
    expect(await draftMessage(desk, { id: order.id, kind: 'order' })).toMatchObject({
      cannot: 'No e-mail address of Carrow Supply is entered.',
    })
    await expect(
      sendOrder(desk, { id: order.id, version: order.version, how: 'email' }),
    ).rejects.toMatchObject({
      code: 'address-missing',
    })
    const { order: after } = await sendOrder(desk, { id: order.id, version: order.version, how: 'paper' })
    expect(after.status).toBe('sent')
  })

  it('is called off for a reason, and then is closed', async () => {
    const order = await draft()
    const { order: sent } = await sendOrder(desk, { id: order.id, version: order.version, how: 'paper' })
    await expect(
      cancelOrder(desk, { id: sent.id, version: sent.version, reason: ' ' }),
    ).rejects.toMatchObject({
      field: 'reason',
    })
    await cancelOrder(desk, { id: sent.id, version: sent.version, reason: 'ordered twice' })
    expect((await listOrders(desk)).map(each => each.status)).toEqual(['cancelled'])
    await expect(
      receiveOrder(desk, { id: sent.id, version: sent.version + 1, lines: [] }),
    ).rejects.toMatchObject({
      code: 'not-under-way',
    })
  })
})
