import { beforeEach, describe, expect, it } from 'vitest'
import { finishStep } from '../../../main/services/job/jobSteps.ts'
import { confirmDraws } from '../../../main/services/shelf/confirmDraws.ts'
import { takeBackMove } from '../../../main/services/shelf/takeBack.ts'
import { lotRows } from '../../../main/store/lotRows.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, type ShelfShop, shelfShop, stock, workUntil } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

const onHand = async (productId: string) =>
  (await lotRows(desk.store.read, [productId])).map(row => ({ id: row.id, ml: row.centi / 100 }))

const line = async (jobId: string, position: number) =>
  desk.store.read.stepDraw.findMany({ where: { jobId, position } })

describe('what a booked job will draw', () => {
  it('follows from the recipes of its treatment the moment it is held', async () => {
    const { jobId } = await book(desk, shop)
    const draws = await desk.store.read.stepDraw.findMany({ where: { jobId }, orderBy: { position: 'asc' } })
    const steps = await desk.store.read.jobStep.findMany({
      where: { jobId, name: { in: ['First layer', 'Second layer'] } },
    })
    expect(
      draws.map(({ position, expectedCenti, sdCenti }) => ({ position, expectedCenti, sdCenti })),
    ).toEqual(
      steps.map(({ position, name }) =>
        name === 'First layer'
          ? { position, expectedCenti: 3000, sdCenti: 400 }
          : { position, expectedCenti: 2000, sdCenti: 300 },
      ),
    )
  })
})

describe('a finished step', () => {
  it('draws from the bottle that expires first, opens it, and says which job it served', async () => {
    const [late] = await stock(desk, shop.coating, shop.sizes.coating, 1, { expiresOn: '2027-03-01' })
    const [early] = await stock(desk, shop.coating, shop.sizes.coating, 1, { expiresOn: '2026-11-01' })
    const booked = await book(desk, shop)
    const layers = await desk.store.read.jobStep.findMany({
      where: { jobId: booked.jobId, stage: 'coat', kind: 'work' },
    })
    const position = layers[0]!.position
    const done = await workUntil(desk, booked, position)
    const { words, left } = await confirmDraws(desk, {
      ...done,
      position,
      draws: [{ productId: shop.coating, lotId: early!, amount: 28.5, how: 'corrected' }],
    })
    expect(words).toEqual(['28.5 ml of Ovrel Two from no. 2'])
    expect(left).toBe(0)
    expect(await onHand(shop.coating)).toEqual([
      { id: late, ml: 50 },
      { id: early, ml: 21.5 },
    ])
    expect(await desk.store.read.lot.findUnique({ where: { id: early! } })).toMatchObject({
      openedOn: '2026-04-15',
      lifeAfterOpeningDays: 60,
    })
    expect(await desk.store.read.stockMove.findFirst({ where: { kind: 'use' } })).toMatchObject({
      jobId: booked.jobId,
      position,
      centi: -2850,
      by: 'front desk',
    })
    expect(await line(booked.jobId, position)).toMatchObject([{ actualCenti: 2850, how: 'corrected' }])
  })

  it('takes a bottle out of turn only for a reason', async () => {
    const [late] = await stock(desk, shop.coating, shop.sizes.coating, 1, { expiresOn: '2027-03-01' })
    await stock(desk, shop.coating, shop.sizes.coating, 1, { expiresOn: '2026-11-01' })
    const booked = await book(desk, shop)
    const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
    const done = await workUntil(desk, booked, position)
    const draw = { productId: shop.coating, lotId: late!, amount: 30, how: 'corrected' as const }
    await expect(confirmDraws(desk, { ...done, position, draws: [draw] })).rejects.toMatchObject({
      code: 'why-missing',
      field: 'draws.0.reason',
    })
    await confirmDraws(desk, {
      ...done,
      position,
      draws: [{ ...draw, reason: 'the other one is at the back' }],
    })
    expect(await desk.store.read.stockMove.findFirst({ where: { kind: 'use' } })).toMatchObject({
      lotId: late,
      why: 'the other one is at the back',
    })
  })

  it('turns the weight of the bottle into millilitres by its density', async () => {
    const [lotId] = await stock(desk, shop.coating, shop.sizes.coating, 1)
    const booked = await book(desk, shop)
    const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
    const done = await workUntil(desk, booked, position)
    // 62 g empty, 1.05 g/ml: at 83 g the bottle holds 21 g, which are 20 ml; 30 ml are gone.
    const draw = { productId: shop.coating, lotId: lotId!, how: 'weighed' as const, weighed: { grossG: 83 } }
    await confirmDraws(desk, { ...done, position, draws: [draw] })
    expect(await onHand(shop.coating)).toEqual([{ id: lotId, ml: 20 }])
    expect(await line(booked.jobId, position)).toMatchObject([{ actualCenti: 3000, how: 'weighed' }])
  })

  it('refuses a weight under that of the empty bottle, and one over what the ledger had', async () => {
    const [lotId] = await stock(desk, shop.coating, shop.sizes.coating, 1)
    const booked = await book(desk, shop)
    const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
    const done = await workUntil(desk, booked, position)
    const weigh = (grossG: number) =>
      confirmDraws(desk, {
        ...done,
        position,
        draws: [{ productId: shop.coating, lotId: lotId!, how: 'weighed', weighed: { grossG } }],
      })
    await expect(weigh(40)).rejects.toMatchObject({ code: 'weight-bad', field: 'draws.0.weighed.grossG' })
    await expect(weigh(200)).rejects.toMatchObject({ code: 'weighs-more' })
    expect(await desk.store.read.stockMove.count({ where: { kind: 'use' } })).toBe(0)
  })

  it('refuses more than the shelf has, and takes it as found more than counted when told so', async () => {
    const [lotId] = await stock(desk, shop.coating, shop.sizes.coating, 1)
    const booked = await book(desk, shop)
    const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
    const done = await workUntil(desk, booked, position)
    const draw = { productId: shop.coating, lotId: lotId!, amount: 55, how: 'corrected' as const }
    await expect(confirmDraws(desk, { ...done, position, draws: [draw] })).rejects.toMatchObject({
      code: 'beyond-stock',
      field: 'draws.0.amount',
    })
    const { words } = await confirmDraws(desk, { ...done, position, draws: [{ ...draw, foundMore: true }] })
    expect(words[0]).toContain('5 ml of it found more than counted')
    expect(await onHand(shop.coating)).toEqual([])
    const moves = await desk.store.read.stockMove.findMany({ orderBy: { seq: 'asc' } })
    expect(moves.map(({ kind, centi }) => [kind, centi])).toEqual([
      ['receipt', 5000],
      ['count', 500],
      ['use', -5500],
    ])
  })

  it('is confirmed once: a second time is told what was recorded, and nothing is drawn twice', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 2)
    const booked = await book(desk, shop)
    const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
    const done = await workUntil(desk, booked, position)
    const confirm = () =>
      confirmDraws(desk, {
        ...done,
        position,
        draws: [{ productId: shop.coating, lotId: null, amount: 30, how: 'proposed' }],
      })
    await confirm()
    await expect(confirm()).rejects.toMatchObject({
      code: 'stale',
      message: expect.stringContaining('30 ml'),
    })
    expect(await desk.store.read.stockMove.count({ where: { kind: 'use' } })).toBe(1)
  })

  it('waits to be confirmed again once its use is taken back, and the ledger keeps both lines', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 2)
    const booked = await book(desk, shop)
    const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
    const done = await workUntil(desk, booked, position)
    const draws = [{ productId: shop.coating, lotId: null, amount: 30, how: 'proposed' as const }]
    await confirmDraws(desk, { ...done, position, draws })
    const use = await desk.store.read.stockMove.findFirstOrThrow({ where: { kind: 'use' } })
    await takeBackMove(desk, { seq: use.seq, reason: 'wrong car' })
    expect(await line(booked.jobId, position)).toMatchObject([{ confirmedAt: null, actualCenti: null }])
    expect((await onHand(shop.coating)).reduce((sum, each) => sum + each.ml, 0)).toBe(100)
    await expect(takeBackMove(desk, { seq: use.seq, reason: 'again' })).rejects.toMatchObject({
      code: 'taken-back',
    })
    await confirmDraws(desk, { ...done, position, draws })
    expect(await desk.store.read.stockMove.count({ where: { kind: { in: ['use', 'correction'] } } })).toBe(3)
  })

  it('can be finished and drawn for in one act', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 1)
    const booked = await book(desk, shop)
    const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
    const draws = [{ productId: shop.coating, lotId: null, amount: 60, how: 'corrected' as const }]
    const last = (amount: number) => (version: number) =>
      finishStep(desk, { id: booked.jobId, version, position, draws: [{ ...draws[0]!, amount }] })
    await expect(workUntil(desk, booked, position, last(60))).rejects.toMatchObject({ code: 'beyond-stock' })
    const before = await desk.store.read.jobStep.findFirstOrThrow({
      where: { jobId: booked.jobId, position },
    })
    expect(before.actualEndAt).toBeNull()
    const { version } = await desk.store.read.job.findUniqueOrThrow({ where: { id: booked.jobId } })
    await last(31)(version)
    const after = await desk.store.read.jobStep.findFirstOrThrow({ where: { jobId: booked.jobId, position } })
    expect(after.actualEndAt).toBe(desk.now())
    expect(await onHand(shop.coating)).toMatchObject([{ ml: 19 }])
  })
})
