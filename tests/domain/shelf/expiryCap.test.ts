import { expect, test } from 'vitest'
import type { Demand } from '../../../main/domain/shelf/demand.ts'
import { expiryCap } from '../../../main/domain/shelf/expiryCap.ts'

const cap = (change: Partial<Parameters<typeof expiryCap>[0]> = {}) =>
  expiryCap({
    demand: { perDayCenti: 100 } as object as Demand,
    inLineCenti: 500,
    leadDays: 5,
    lifeDays: 20,
    packCenti: 1_000,
    ...change,
  })

test('no more packs than are used before their date, behind what is in line already', () => {
  // 25 days at 100 are 2500; 500 are in line, so 2000 are left: two packs, of which the last is just used up.
  expect(cap()).toEqual({ packs: 2, usedByThenCenti: 2_500 })
  expect(cap({ inLineCenti: 501 })).toMatchObject({ packs: 1 })
  expect(cap({ inLineCenti: 9_000 })).toMatchObject({ packs: 0 })
  // A shelf that owes holds nothing that is used first.
  expect(cap({ inLineCenti: -1_000 })).toMatchObject({ packs: 2 })
})

test('goods that keep have no bound', () => {
  expect(cap({ lifeDays: null })).toBeNull()
})
