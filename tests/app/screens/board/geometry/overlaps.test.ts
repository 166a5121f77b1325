import { expect, test } from 'vitest'
import { overlapsOf } from '../../../../../app/screens/board/geometry/overlaps.ts'

const stay = (bayId: string, fromAt: number, toAt: number) => ({ bayId, fromAt, toAt })

test('Two cars overlap in one bay while both are there; one after the other, or in two bays, they do not', () => {
  expect(overlapsOf([stay('a', 0, 60), stay('a', 45, 90), stay('b', 0, 90)])).toEqual([
    { bayId: 'a', fromAt: 45, toAt: 60 },
  ])
  expect(overlapsOf([stay('a', 0, 60), stay('a', 60, 90)])).toEqual([])
})
