import { expect, test } from 'vitest'
import { coatOfHold, coatsOf, leavingTimes, marksOf, profilesIn } from '../../../main/domain/floor/index.ts'
import { sheetProfile } from '../cure/profiles.ts'
import { hold, laid, products, work } from './sampleJob.ts'

const planned = (position: number, startAt: number, productId: string) =>
  work(position, startAt, { productId })

test('Coats are the hands-on steps whose product cures, in their order', () => {
  const steps = [
    planned(0, 0, 'wash'),
    planned(1, 60, 'coating'),
    hold(2, 120, 300),
    planned(3, 300, 'topper'),
  ]
  expect(
    coatsOf(steps, products).map(({ index, product, endAt, actual }) => [index, product.id, endAt, actual]),
  ).toEqual([
    [1, 'coating', 120, false],
    [3, 'topper', 360, false],
  ])
})

test('A hold belongs to the last coat of its own product before it, else to the last of any', () => {
  const coats = coatsOf(
    [planned(0, 0, 'coating'), planned(1, 60, 'topper'), planned(2, 120, 'coating')],
    products,
  )
  const index = (at: number, productId: string | null) => coatOfHold(coats, at, productId)?.index ?? null
  expect(index(2, 'coating')).toBe(0)
  expect(index(2, 'topper')).toBe(1)
  expect(index(2, null)).toBe(1)
  expect(index(3, 'coating')).toBe(2)
  expect(index(0, 'coating')).toBeNull()
})

// The sheet: tack-free after 45 minutes, topper after 60 to 120, handover after 360, advised 720.
test('A planned coat has the times of its profile; a laid one in the cold has them later', () => {
  const [plan] = coatsOf([planned(0, 0, 'coating')], products)
  expect(plan && marksOf(plan, 'covered')).toMatchObject({
    actual: false,
    clock: null,
    tackFreeAt: 60 + 45,
    topperAt: 60 + 60,
    // The first panel was done when the coat was begun.
    topperClosesAt: 120,
    safeAt: 60 + 360,
    advisedAt: 60 + 720,
  })
  // Ten degrees under the reference, by the doubling rule: twice as long.
  const [cold] = coatsOf([laid(0, 60, {}, 10)], products)
  expect(cold && marksOf(cold, 'covered')).toMatchObject({
    actual: true,
    tackFreeAt: 60 + 90,
    safeAt: 60 + 720,
  })
})

test('Windows are told for the layers that follow, by every panel', () => {
  const second = work(2, 200, { stage: 'coat', productId: 'coating', endAt: 290 })
  const cure = hold(1, 60, 200, { stage: 'coat' })
  const [coat] = coatsOf([planned(0, 0, 'coating'), cure, second], products)
  // 60 to 240 minutes; layers of 60 and 90: 240 less the 90 of the last panel.
  expect(coat && marksOf(coat, 'covered')).toMatchObject({ recoatOpensAt: 60 + 8, recoatClosesAt: 60 + 150 })
})

test('Nothing goes on a topper', () => {
  const [coat] = coatsOf([planned(0, 0, 'topper')], products)
  expect(coat && marksOf(coat, 'covered')).toMatchObject({
    topperAt: null,
    topperAdvisedAt: null,
    topperClosesAt: null,
  })
})

test('A car leaves when every coat lets it, and not before the work is done', () => {
  expect(leavingTimes([laid(0, 60), planned(1, 90, 'wash')], products, 'covered')).toEqual({
    safeAt: 60 + 360,
    advisedAt: 60 + 720,
  })
  // The first coat in the cold takes longer than the second, which came later.
  expect(leavingTimes([laid(0, 60, {}, 10), laid(1, 200)], products, 'covered').safeAt).toBe(60 + 720)
  expect(leavingTimes([work(0, 0), work(1, 2000)], products, 'dry')).toEqual({
    safeAt: 2060,
    advisedAt: 2060,
  })
  expect(leavingTimes([work(0, 0, { actualEndAt: 75 })], products, 'dry').safeAt).toBe(75)
})

// The sheet: dry for 1440 minutes, handover after 360.
test('A car that must stay dry leaves when it may get wet, not at its handover figure', () => {
  expect(leavingTimes([laid(0, 60)], products, 'dry')).toEqual({ safeAt: 60 + 1440, advisedAt: 60 + 1440 })
  const [coat] = coatsOf([planned(0, 0, 'coating')], products)
  expect(coat && marksOf(coat, 'dry').safeAt).toBe(60 + 1440)
})

test('Only products that cure have a profile to look up', () => {
  expect(profilesIn(products)).toEqual({ coating: sheetProfile, topper: sheetProfile })
})
