import { expect, test } from 'vitest'
import { closedCureOf, objectiveOf, staysOf } from '../../../main/domain/schedule/measure.ts'
import { openTime } from '../../../main/domain/schedule/openTime.ts'
import { at, example } from './example.ts'

const hours = openTime(example.open)
const { steps } = example.newJob
/** Washed at 15:00, coated at 16:00, then curing through the evening in a bay it is moved to. */
const plan = {
  steps: [
    { bay: 'wash', start: at(15), end: at(16), crew: ['Jo'] },
    { bay: 'clean', start: at(16), end: at(17, 30), crew: ['Jo'] },
    { bay: 'clean', start: at(17, 30), end: at(21, 30), crew: [], moved: { at: at(18), bay: 'wash' } },
  ],
  handover: at(33),
}

test('Blocked are the opening minutes in which nobody works on it', () => {
  // Open from 15:00 to 18:00 and 08:00 to 09:00, four hours, of which two and a half are worked.
  expect(objectiveOf(hours, steps, plan)).toEqual({
    dropOff: at(15),
    handover: at(33),
    blockedOpen: 90,
    moves: 2,
  })
})

test('Stays run on until the car is moved or goes home', () => {
  expect(staysOf(plan)).toEqual([
    { bay: 'wash', from: at(15), to: at(16) },
    { bay: 'clean', from: at(16), to: at(18) },
    { bay: 'wash', from: at(18), to: at(33) },
  ])
})

test('A cure after closing keeps no bay from its work', () => {
  expect(closedCureOf(hours, steps, plan)).toBe(3.5 * 60)
})
