import { expect, test } from 'vitest'
import { meetsBay } from '../../../main/domain/floor/bayFree.ts'
import type { Booked, FloorBay } from '../../../main/domain/floor/floor.ts'

const bay: FloorBay = {
  id: 'B',
  name: 'Bay 1',
  capabilities: ['clean'],
  offers: [],
  closures: [],
  archived: false,
}
const stay = (from: number, to: number, bayId = 'B') => ({
  handoverAt: to,
  leavesAt: to,
  steps: [{ bayId, startAt: from, endAt: to, movedToBayId: null, movedAt: null, crewIds: [] }],
})
const free = (span: { from: number; to: number }, change: Partial<FloorBay> = {}, jobs: object[] = []) =>
  meetsBay({ jobs } as object as Booked, { ...bay, ...change }, { needs: 'clean' }, span)
const span = { from: 600, to: 660 }

test('A bay is free for what it can do, while it is kept', () => {
  expect(free(span)).toBe(true)
  expect(free(span, { capabilities: ['wet'] })).toBe(false)
  expect(free(span, { archived: true })).toBe(false)
})

test('A closure that ends as the step begins, or begins as it ends, is not in the way; a minute more is', () => {
  const closed = (fromAt: number, toAt: number) => free(span, { closures: [{ fromAt, toAt, reason: '' }] })
  expect([closed(500, 600), closed(660, 700)]).toEqual([true, true])
  expect([closed(500, 601), closed(659, 700), closed(610, 620)]).toEqual([false, false, false])
})

test('So is a car, in this bay alone', () => {
  expect(free(span, {}, [stay(500, 600), stay(660, 700)])).toBe(true)
  expect(free(span, {}, [stay(500, 601)])).toBe(false)
  expect(free(span, {}, [stay(500, 700, 'C')])).toBe(true)
})

test('A moment is asked for as the minute that begins then', () => {
  const moment = { from: 600, to: 600 }
  expect(free(moment, {}, [stay(600, 700)])).toBe(false)
  expect(free(moment, {}, [stay(500, 600)])).toBe(true)
  expect(free(moment, {}, [stay(601, 700)])).toBe(true)
})
