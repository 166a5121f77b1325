import { expect, test } from 'vitest'
import { unfetchedSince } from '../../../main/domain/floor/unfetched.ts'

const job = { status: 'inShop' as const, promisedAt: 600, handoverAt: 540 }
const at = (nowAt: number) => ({ nowAt, gridMin: 15 })

test('A car is unfetched a grid step after its promise, or after it was ready where that came later', () => {
  expect([599, 614, 615].map(nowAt => unfetchedSince(job, at(nowAt)))).toEqual([null, null, 600])
  expect(unfetchedSince({ ...job, handoverAt: 700 }, at(714))).toBeNull()
  expect(unfetchedSince({ ...job, handoverAt: 700 }, at(715))).toBe(700)
})

test('One that is not here is not waited for', () => {
  for (const status of ['booked', 'handedOver', 'held', 'cancelled'] as const)
    expect(unfetchedSince({ ...job, status }, at(9_999))).toBeNull()
})
