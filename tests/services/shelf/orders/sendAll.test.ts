import { afterEach, expect, it } from 'vitest'
import { getOrder } from '../../../../main/services/shelf/orders/orderViews.ts'
import { sendAll } from '../../../../main/services/shelf/orders/sendAll.ts'
import { type OrderDesk, orderDesk } from './orderDesk.ts'

let shopDesk: OrderDesk
afterEach(() => shopDesk.close())

it('sends every draft by e-mail in one call, and each only once', async () => {
  shopDesk = await orderDesk()
  const { id, version } = await shopDesk.draft()
  const { sent, words } = await sendAll(shopDesk.desk, { lines: [], drafts: [{ id, version }] })
  expect([sent, words]).toEqual([1, [expect.stringMatching(/^✓ Order \d+ went to /)]])
  expect(await getOrder(shopDesk.desk, { id })).toMatchObject({ status: 'sent' })
  const again = await sendAll(shopDesk.desk, { lines: [], drafts: [{ id, version }] })
  expect([again.sent, again.words]).toEqual([0, [expect.stringMatching(/^✕ .*sent, or called off, already/)]])
})

it('leaves an order that does not go out a draft, and says why', async () => {
  shopDesk = await orderDesk({
    onRcptTo(_address, _session, done) {
      done(new Error('550 no such mailbox'))
    },
  })
  const { id, version } = await shopDesk.draft()
  const { sent, words } = await sendAll(shopDesk.desk, { lines: [], drafts: [{ id, version }] })
  expect([sent, words]).toEqual([0, [expect.stringMatching(/^✕ Order \d+ did not go out\./)]])
  expect(await getOrder(shopDesk.desk, { id })).toMatchObject({ status: 'draft' })
})
