import { expect, test } from 'vitest'
import { skilledFor, stepAt, teamSize } from '../../../main/domain/schedule/steps.ts'
import type { Step } from '../../../main/domain/schedule/types.ts'
import { example } from './example.ts'

const wash: Step = { kind: 'work', minutes: 60, skill: 'wash', crew: 2, split: false }
const crew = [
  { id: 'Jo', skills: ['wash', 'coat'], away: [] },
  { id: 'Kim', skills: ['coat'], away: [] },
]

test('A step takes its crew, and nobody where it asks no skill or is a hold', () => {
  expect(teamSize(wash)).toBe(2)
  expect(teamSize({ ...wash, skill: null })).toBe(0)
  expect(teamSize({ kind: 'hold', minutes: 60 })).toBe(0)
})

test('Only those with the skill can do it', () => {
  expect(skilledFor(wash, crew).map(({ id }) => id)).toEqual(['Jo'])
  expect(skilledFor({ ...wash, skill: null }, crew)).toEqual([])
})

test('A step past the end of the chain is named', () => {
  expect(stepAt(example, 1).minutes).toBe(90)
  expect(() => stepAt(example, 3)).toThrow('Job new has no step 4')
})
