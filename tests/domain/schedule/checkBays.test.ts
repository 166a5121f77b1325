import { expect, test } from 'vitest'
import { checkBays } from '../../../main/domain/schedule/checkBays.ts'
import { at, example } from './example.ts'

/** The codes of what a plan with these bays breaks: washed, coated and cured from 11:00 on. */
function codes(bays: readonly [string, string, string], from = at(11)) {
  const times = [from, from + 60, from + 150, from + 390]
  const steps = bays.map((bay, i) => ({ bay, start: times[i] ?? 0, end: times[i + 1] ?? 0, crew: [] }))
  return checkBays(example, { steps, handover: from + 390 }).map(({ code, step, bay }) => [code, step, bay])
}

test('A plan in the bays the steps ask for is sound on a free day', () => {
  expect(codes(['wash', 'clean', 'clean'], at(32))).toEqual([])
})

test('Bays nobody has, bays that cannot take a step, and a bay that was left', () => {
  expect(codes(['roof', 'clean', 'clean'], at(32))).toEqual([['unknownBay', 0, 'roof']])
  expect(codes(['wash', 'wash', 'wash'], at(32))).toEqual([['unfitBay', 1, 'wash']])
  expect(codes(['wash', 'clean', 'wash'], at(32))).toEqual([['leftBay', 2, 'clean']])
})

test('A stay over somebody else’s', () => {
  // In the clean bay from 12:00 to 17:30; it is taken from 16:00.
  expect(codes(['wash', 'clean', 'clean'])).toEqual([['bayTaken', undefined, 'clean']])
})

test('A stay over a closure', () => {
  const closed = {
    ...example,
    fixed: [],
    bays: [{ id: 'wash', can: ['wet'], closed: [{ from: at(9), to: at(10) }] }],
  }
  const steps = [{ bay: 'wash', start: at(9, 30), end: at(10, 30), crew: [] }]
  expect(checkBays(closed, { steps, handover: at(10, 30) })).toEqual([
    { code: 'bayClosed', bay: 'wash', from: at(9), to: at(10) },
  ])
})
