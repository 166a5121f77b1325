import { expect, test } from 'vitest'
import { stretchesFrom } from '../../../main/domain/cure/stretches.ts'

test('Stretches follow each other without a hole, each a straight line', () => {
  const row = stretchesFrom(100, 3)
  expect([row.count(), row.endAt()]).toEqual([0, 100])
  row.add(160, 10, 16, 'measured')
  row.add(200, 16, 16, 'assumed')
  row.add(220, 16, 12, 'projected')
  expect([row.count(), row.endAt()]).toEqual([3, 220])
  expect([0, 1, 2].map(i => [row.from(i), row.to(i), row.fromC(i), row.toC(i), row.part(i)])).toEqual([
    [100, 160, 10, 16, 'measured'],
    [160, 200, 16, 16, 'assumed'],
    [200, 220, 16, 12, 'projected'],
  ])
  expect([100, 130, 160].map(at => row.celsiusAt(0, at))).toEqual([10, 13, 16])
  expect(row.celsiusAt(2, 215)).toBe(13)
})

test('What ends no later than the last one is nothing', () => {
  const row = stretchesFrom(100, 2)
  row.add(100, 20, 20, 'measured')
  row.add(99, 20, 20, 'measured')
  expect(row.count()).toBe(0)
})

test('An endless steady stretch has its temperature at any minute', () => {
  const row = stretchesFrom(0, 1)
  row.add(Number.POSITIVE_INFINITY, 20, 20, 'projected')
  expect(row.celsiusAt(0, 1e9)).toBe(20)
})
