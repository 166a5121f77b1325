import { beforeEach, expect, it } from 'vitest'
import { shelfProduct } from '../../../main/services/shelf/productPage.ts'
import { changeSet, saveGrades, startSet } from '../../../main/services/shelf/reusables.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type ShelfShop, shelfShop, stock } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
  const grades = [
    { name: 'Finish', washes: 2 },
    { name: 'Wheels', washes: 1 },
  ]
  await saveGrades(desk, { productId: shop.cloths, version: 0, grades })
  await stock(desk, shop.cloths, shop.sizes.cloths, 1)
  await startSet(desk, { productId: shop.cloths, name: 'Blue', amount: 6 })
})

const page = async () => shelfProduct(desk, { id: shop.cloths })
const blue = async () => (await page()).reusables!.sets[0]!
const change = async (act: Parameters<typeof changeSet>[1]['act'], reason = '', version?: number) => {
  const set = await blue()
  return changeSet(desk, { id: set.id, version: version ?? set.version, act, reason })
}

it('leave the shelf once and are washed, not used up', async () => {
  expect(await page()).toMatchObject({
    onHand: 44,
    reusables: { inUse: 6, sets: [{ name: 'Blue', gradeName: 'Finish', gradeMost: 2, due: null }] },
  })
  await change({ kind: 'washed' })
  await change({ kind: 'washed' })
  expect(await page()).toMatchObject({ onHand: 44, reusables: { inUse: 6 } })
  expect(await blue()).toMatchObject({ washes: 2, gradeWashes: 2, due: { act: 'demote', to: 'Wheels' } })
  await change({ kind: 'demoted' }, 'washed often enough')
  expect(await blue()).toMatchObject({ gradeName: 'Wheels', gradeWashes: 0, next: null, due: null })
  await change({ kind: 'washed' })
  expect((await blue()).due).toEqual({ act: 'retire' })
})

it('are retired piece by piece, each time for a reason that stays', async () => {
  await expect(change({ kind: 'retired', pieces: 2 }, ' ')).rejects.toMatchObject({ field: 'reason' })
  await expect(change({ kind: 'retired', pieces: 7 }, 'frayed')).rejects.toMatchObject({ field: 'pieces' })
  await change({ kind: 'retired', pieces: 2 }, 'frayed')
  expect(await blue()).toMatchObject({ pieces: 4, retired: 2 })
  const line = await desk.store.read.auditLine.findFirst({ where: { act: 'set changed' } })
  expect(line).toMatchObject({
    entityId: shop.cloths,
    detail: { done: 'retired', why: 'frayed', pieces: [6, 4] },
  })
  await change({ kind: 'retired', pieces: 4 }, 'the rest too')
  expect((await page()).reusables).toMatchObject({ inUse: 0, sets: [] })
})

it('are changed by one window at a time, and no more are taken than there are', async () => {
  const { version } = await blue()
  await change({ kind: 'washed' })
  await expect(change({ kind: 'washed' }, '', version)).rejects.toMatchObject({ code: 'stale' })
  const start = (amount: number) => startSet(desk, { productId: shop.cloths, name: 'Red', amount })
  await expect(start(45)).rejects.toMatchObject({ code: 'beyond-stock' })
  await expect(start(0)).rejects.toMatchObject({ code: 'amount-not-positive' })
  await expect(startSet(desk, { productId: shop.topper, name: 'Red', amount: 1 })).rejects.toMatchObject({
    code: 'missing',
  })
})
