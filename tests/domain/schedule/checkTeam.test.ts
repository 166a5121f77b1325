import { expect, test } from 'vitest'
import { checkTeam } from '../../../main/domain/schedule/checkTeam.ts'
import { openTime } from '../../../main/domain/schedule/openTime.ts'
import { stepAt } from '../../../main/domain/schedule/steps.ts'
import { at, example } from './example.ts'

const people = [
  {
    id: 'Jo',
    skills: ['wash'],
    away: [
      { from: at(12), to: at(13) },
      { from: at(20), to: at(22) },
    ],
  },
  { id: 'Kim', skills: [], away: [] },
]

/** The codes of what a wash by these people breaks, from one hour to another. */
function codes(crew: readonly string[], from = 8, to = 9) {
  const problem = { ...example, crew: people }
  const placed = { bay: 'wash', start: at(from), end: at(to), crew }
  const hours = openTime(problem.open)
  return checkTeam({ problem, hours, step: stepAt(problem, 0), placed, index: 0 }).map(({ code }) => code)
}

test('The right person, who is there, may do it', () => {
  expect(codes(['Jo'])).toEqual([])
})

test('Too few, too many, twice the same, unknown and unskilled', () => {
  expect(codes([])).toEqual(['crewSize'])
  expect(codes(['Jo', 'Jo'])).toEqual(['crewSize', 'personTwice'])
  expect(codes(['Nobody'])).toEqual(['unknownPerson'])
  expect(codes(['Kim'])).toEqual(['unskilled'])
})

test('Away counts in opening minutes only', () => {
  expect(codes(['Jo'], 11, 13)).toEqual(['personAway'])
  expect(codes(['Jo'], 17, 33)).toEqual([])
})
