import { beforeEach, expect, test } from 'vitest'
import { boardRange } from '../../../main/services/board/board.ts'
import { tryMove } from '../../../main/services/board/boardMove.ts'
import { morningSheet } from '../../../main/services/morning/morning.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
})

test('A day further off than anything can be booked is refused by its field, on the board and the sheet', async () => {
  await expect(boardRange(desk, { fromDate: '2029-06-01', days: 1 })).rejects.toMatchObject({
    code: 'date-far',
    field: 'fromDate',
  })
  await expect(morningSheet(desk, { date: '9999-12-31' })).rejects.toMatchObject({ field: 'date' })
  expect((await boardRange(desk, { fromDate: '2029-04-01', days: 1 })).stays).toEqual([])
  expect((await boardRange(desk, { fromDate: '1990-04-01', days: 1 })).stays).toEqual([])
})

test('A stay dragged further than the floor is worked out is refused in words', async () => {
  const job = await bookJob(desk, shop, { treatments: ['wash'] })
  const startAt = desk.now() + 4 * 366 * 1440
  const place = { position: 0, bayId: shop.bays['Bay 1']!, startAt }
  expect(await tryMove(desk, { jobId: job.id, version: job.version, ...place })).toMatchObject({
    ok: false,
    reasons: ['That is too far off; choose an earlier day.'],
  })
})
