import { beforeEach, expect, it } from 'vitest'
import { finishStep } from '../../../main/services/job/jobSteps.ts'
import { closeOfDay } from '../../../main/services/shelf/closeOfDay.ts'
import { confirmDraws } from '../../../main/services/shelf/confirmDraws.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, type ShelfShop, shelfShop, stock, workUntil } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

/** A finished first layer, and three bottles: two of one batch, the third of another. */
async function layerDone() {
  const lots = await stock(desk, shop.coating, shop.sizes.coating, 3)
  for (const [i, id] of lots.entries())
    await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
      tx.lot.update({ where: { id }, data: { batch: i < 2 ? 'K-1' : 'K-2' } }),
    )
  const booked = await book(desk, shop)
  const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
  return { lots, step: { ...(await workUntil(desk, booked, position)), position } }
}

const part = (lotId: string, amount: number) => ({
  productId: shop.coating,
  lotId,
  amount,
  how: 'corrected' as const,
  reason: 'it stood there',
})

it('asks before a second batch of a coating goes onto a car, and keeps the reason', async () => {
  const { lots, step } = await layerDone()
  const draws = [part(lots[0]!, 20), part(lots[2]!, 10)]
  await expect(confirmDraws(desk, { ...step, draws })).rejects.toMatchObject({
    code: 'mixes-lots',
    field: 'draws.0.mixing',
    message: expect.stringMatching(/Two batches of Ovrel Two.*\nno\. 1, batch K-1\nno\. 3, batch K-2/),
  })
  expect(await desk.store.read.stockMove.count({ where: { kind: 'use' } })).toBe(0)
  const mixing = 'tried side by side on the test panel'
  await confirmDraws(desk, { ...step, draws: draws.map(draw => ({ ...draw, mixing })) })
  const uses = await desk.store.read.stockMove.findMany({ where: { kind: 'use' } })
  expect(uses.map(use => use.why)).toEqual([mixing, `it stood there; ${mixing}`])
  expect(await desk.store.read.auditLine.findFirst({ where: { act: 'drawn' } })).toMatchObject({
    detail: { mixing: `${mixing}; ${mixing}` },
  })
})

it('asks nothing where both bottles are of one batch', async () => {
  const { lots, step } = await layerDone()
  await confirmDraws(desk, { ...step, draws: [part(lots[0]!, 20), part(lots[1]!, 10)] })
  expect(await desk.store.read.stockMove.count({ where: { kind: 'use' } })).toBe(2)
})

it('finishes a step as planned where a second batch would go on, and leaves what it drew to be looked at', async () => {
  const lots = await stock(desk, shop.coating, shop.sizes.coating, 2)
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.lot.update({ where: { id: lots[1]! }, data: { batch: 'K-2' } }),
  )
  const asPlanned = async () => {
    const booked = await book(desk, shop)
    const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
    const finish = (version: number) =>
      finishStep(desk, { id: booked.jobId, version, position, asPlanned: true })
    return { ...(await workUntil(desk, booked, position, finish)), position }
  }
  await asPlanned()
  expect((await closeOfDay(desk)).stepsToConfirm).toEqual([])
  // 20 ml are left in the open bottle, and 30 are asked.
  const second = await asPlanned()
  expect((await closeOfDay(desk)).stepsToConfirm).toMatchObject([
    { jobId: second.jobId, plain: false, draws: [{ productId: shop.coating, look: 'mixes' }] },
  ])
})
