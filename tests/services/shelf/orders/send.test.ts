import { afterEach, describe, expect, it } from 'vitest'
import type { OrderView } from '../../../../main/api/views.ts'
import { cancelOrder } from '../../../../main/services/shelf/orders/draft.ts'
import { getOrder } from '../../../../main/services/shelf/orders/orderViews.ts'
import { promiseOrder, receiveOrder } from '../../../../main/services/shelf/orders/receive.ts'
import { chaseOrder, sendOrder } from '../../../../main/services/shelf/orders/send.ts'
import { type OrderDesk, orderDesk } from './orderDesk.ts'

let shopDesk: OrderDesk
afterEach(() => shopDesk.close())

/** A mail server that asks `first` to be done before it refuses the letter. */
const refusingAfter = (first: () => Promise<unknown>) =>
  orderDesk({
    onRcptTo(_address, _session, done) {
      void first().then(() => done(new Error('550 no such mailbox')))
    },
  })

describe('an order whose letter is refused', () => {
  const elsewhere: [string, (order: OrderView) => Promise<unknown>, Partial<OrderView>][] = [
    [
      'received',
      order =>
        receiveOrder(shopDesk.desk, {
          id: order.id,
          version: order.version,
          lines: order.lines.map(line => ({ lineId: line.id, containers: 3, expiresOn: null, batch: null })),
        }),
      { status: 'received' },
    ],
    [
      'called off',
      order => cancelOrder(shopDesk.desk, { id: order.id, version: order.version, reason: 'ordered twice' }),
      { status: 'cancelled' },
    ],
    [
      'dated',
      order =>
        promiseOrder(shopDesk.desk, { id: order.id, version: order.version, promisedOn: '2026-04-22' }),
      { status: 'sent', expectedOn: '2026-04-22' },
    ],
  ]

  it.each(elsewhere)(
    'and which another desk has %s meanwhile never goes backwards',
    async (_, act, after) => {
      let id = ''
      shopDesk = await refusingAfter(async () => act(await getOrder(shopDesk.desk, { id })))
      const order = await shopDesk.draft()
      id = order.id
      const { sent, words, order: now } = await sendOrder(shopDesk.desk, { ...order, how: 'email', text: '' })
      expect(sent).toBe(false)
      expect(now).toMatchObject(after)
      expect(now.sentAt).toBe(shopDesk.desk.now())
      expect(now.messages).toMatchObject([{ failure: expect.stringContaining('no such mailbox') }])
      expect(words).toContain('stays as it is now')
    },
  )

  it('is a draft again where nobody touched it, and can be sent another way', async () => {
    shopDesk = await refusingAfter(async () => {})
    const order = await shopDesk.draft()
    const { order: now, words } = await sendOrder(shopDesk.desk, { ...order, how: 'email', text: '' })
    expect(now).toMatchObject({ status: 'draft', sentAt: null, expectedOn: null, lateFromOn: null })
    expect(words).not.toContain('stays as it is now')
    await expect(sendOrder(shopDesk.desk, { ...order, how: 'paper' })).rejects.toMatchObject({
      code: 'stale',
    })
    const { order: sent } = await sendOrder(shopDesk.desk, { ...now, how: 'paper' })
    expect(sent).toMatchObject({ status: 'sent', sentAt: shopDesk.desk.now(), expectedOn: '2026-04-20' })
  })
})

describe('asking after an order', () => {
  it('writes one letter, however often it is pressed at once', async () => {
    shopDesk = await orderDesk()
    const { order } = await sendOrder(shopDesk.desk, { ...(await shopDesk.draft()), how: 'paper' })
    const outcomes = await Promise.allSettled(
      [1, 2, 3].map(() => chaseOrder(shopDesk.desk, { id: order.id, version: order.version })),
    )
    expect(outcomes.map(each => each.status).sort()).toEqual(['fulfilled', 'rejected', 'rejected'])
    expect(shopDesk.mail.letters).toHaveLength(1)
    // The next time, on purpose and by what the order has become, it goes.
    const { version } = await getOrder(shopDesk.desk, { id: order.id })
    expect(await chaseOrder(shopDesk.desk, { id: order.id, version })).toMatchObject({ sent: true })
    expect(shopDesk.mail.letters).toHaveLength(2)
  })

  it('that is not under way is refused', async () => {
    shopDesk = await orderDesk()
    const draft = await shopDesk.draft()
    await expect(chaseOrder(shopDesk.desk, draft)).rejects.toMatchObject({ code: 'not-under-way' })
    expect(shopDesk.mail.letters).toHaveLength(0)
  })
})
