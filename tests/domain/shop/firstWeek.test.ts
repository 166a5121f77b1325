import { expect, test } from 'vitest'
import { firstWeek } from '../../../main/domain/shop/index.ts'

const all = (done: boolean) => ({
  prices: done,
  cure: done,
  booking: done,
  shelf: done,
  papers: done,
  mail: done,
})

test('A new shop sees every first step, in the order they are wanted, each with whether it is done', () => {
  expect(firstWeek({ ...all(false), booking: true }, 0)).toEqual([
    { step: 'prices', done: false },
    { step: 'cure', done: false },
    { step: 'booking', done: true },
    { step: 'shelf', done: false },
    { step: 'papers', done: false },
    { step: 'mail', done: false },
  ])
})

test('Nobody is reminded once all is done, after two weeks, or where nobody knows when the shop began', () => {
  expect(firstWeek(all(true), 0)).toBeNull()
  expect(firstWeek(all(false), 14 * 24 * 60)).not.toBeNull()
  expect(firstWeek(all(false), 14 * 24 * 60 + 1)).toBeNull()
  expect(firstWeek(all(false), null)).toBeNull()
})
