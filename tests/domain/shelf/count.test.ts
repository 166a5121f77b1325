import { expect, test } from 'vitest'
import { countMove } from '../../../main/domain/shelf/count.ts'

const counted = { lotId: 'lot', productId: 'polish', at: 1000, by: 'Jo', why: 'count' }

test('The difference to the ledger is moved, up or down', () => {
  expect(countMove(50_000, { ...counted, countedCenti: 48_500 })).toMatchObject({
    kind: 'count',
    centi: -1_500,
    lotId: 'lot',
  })
  expect(countMove(0, { ...counted, countedCenti: 200 })?.centi).toBe(200)
})

test('Where they agree nothing is moved', () => {
  expect(countMove(48_500, { ...counted, countedCenti: 48_500 })).toBeNull()
})

test('Less than nothing cannot be counted', () => {
  expect(() => countMove(0, { ...counted, countedCenti: -1 })).toThrow(
    expect.objectContaining({ code: 'amount-bad', field: 'countedCenti', value: -1 }),
  )
})
