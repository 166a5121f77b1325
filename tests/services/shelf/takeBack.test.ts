import { beforeEach, describe, expect, it } from 'vitest'
import { confirmDraws } from '../../../main/services/shelf/confirmDraws.ts'
import { takeStock } from '../../../main/services/shelf/stockChanges.ts'
import { takeBackMove } from '../../../main/services/shelf/takeBack.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, type ShelfShop, shelfShop, stock, workUntil } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

const ledger = async () => desk.store.read.stockMove.findMany({ orderBy: { seq: 'asc' } })
const bottle = async () => (await stock(desk, shop.coating, shop.sizes.coating, 1))[0] ?? ''

describe('a move taken back', () => {
  it('stays in the ledger with the correction that names it, and the bottle holds what it held', async () => {
    const lotId = await bottle()
    await takeStock(desk, { productId: shop.coating, lotId, amount: 12, reason: 'test panel' })
    const [, use] = await ledger()
    const { onHand, words } = await takeBackMove(desk, { seq: use?.seq ?? 0, reason: 'wrong bottle' })
    expect(onHand).toBe(50)
    expect(words).toEqual(['use of 12 ml from no. 1 of Ovrel Two taken back'])
    expect(
      (await ledger()).map(({ kind, centi, correctsSeq, why }) => [kind, centi, correctsSeq, why]),
    ).toEqual([
      ['receipt', 5_000, null, null],
      ['use', -1_200, null, 'test panel'],
      ['correction', 1_200, use?.seq, 'wrong bottle'],
    ])
  })

  it('is refused where the bottle has given meanwhile what the move had added', async () => {
    const lotId = await bottle()
    await takeStock(desk, { productId: shop.coating, lotId, amount: 1, reason: 'test panel' })
    const [receipt] = await ledger()
    await expect(takeBackMove(desk, { seq: receipt?.seq ?? 0, reason: 'never came' })).rejects.toMatchObject({
      code: 'beyond-stock',
      field: 'amount',
    })
    expect(await ledger()).toHaveLength(2)
  })

  it('is taken back once, for a reason, and a correction not at all', async () => {
    await bottle()
    const [receipt] = await ledger()
    const seq = receipt?.seq ?? 0
    await expect(takeBackMove(desk, { seq, reason: ' ' })).rejects.toMatchObject({ field: 'reason' })
    await expect(takeBackMove(desk, { seq: seq + 99, reason: 'x' })).rejects.toMatchObject({
      code: 'missing',
    })
    expect((await takeBackMove(desk, { seq, reason: 'never came' })).words).toEqual([
      'receipt of 50 ml into no. 1 of Ovrel Two taken back',
    ])
    const correction = (await ledger()).at(-1)?.seq ?? 0
    for (const again of [seq, correction])
      await expect(takeBackMove(desk, { seq: again, reason: 'again' })).rejects.toMatchObject({
        code: 'taken-back',
      })
  })

  it('that was one of two a step drew by leaves the step confirmed with the other', async () => {
    const lotIds = await stock(desk, shop.coating, shop.sizes.coating, 2)
    const booked = await book(desk, shop)
    const where = { jobId: booked.jobId, productId: shop.coating }
    const { position } = await desk.store.read.stepDraw.findFirstOrThrow({
      where,
      orderBy: { position: 'asc' },
    })
    const done = await workUntil(desk, booked, position)
    const part = (i: number, amount: number) => ({
      productId: shop.coating,
      lotId: lotIds[i] ?? '',
      amount,
      how: 'corrected' as const,
      reason: 'both were open',
    })
    await confirmDraws(desk, { ...done, position, draws: [part(0, 20), part(1, 8)] })
    const second = (await ledger()).find(move => move.centi === -800)
    await takeBackMove(desk, { seq: second?.seq ?? 0, reason: 'spilt, not laid' })
    const key = { ...where, position }
    expect(await desk.store.read.stepDraw.findFirst({ where: key })).toMatchObject({
      actualCenti: 2_000,
      how: 'corrected',
      confirmedAt: expect.any(Number),
    })
  })
})
