import { expect, test } from 'vitest'
import { prepare } from '../../../main/domain/schedule/prepare.ts'
import { chooseTeam } from '../../../main/domain/schedule/team.ts'
import type { Work } from '../../../main/domain/schedule/types.ts'
import { at, example } from './example.ts'

const crew = ['Ada', 'Bo', 'Cy'].map(id => ({ id, skills: ['coat'], away: [] }))
const prepared = prepare({
  ...example,
  crew: [...crew, { id: 'Di', skills: ['coat'], away: [{ from: at(9), to: at(9, 15) }] }],
})
const step: Work = { kind: 'work', minutes: 90, skill: 'coat', crew: 2, split: false }
const when = { start: at(8, 30), end: at(10) }

test('Preferred people come first, then those on the car already, then by name', () => {
  expect(chooseTeam(prepared, step, when, new Set())).toEqual(['Ada', 'Bo'])
  expect(chooseTeam(prepared, step, when, new Set(['Cy']))).toEqual(['Cy', 'Ada'])
  expect(chooseTeam(prepared, { ...step, preferCrew: ['Bo'] }, when, new Set(['Cy']))).toEqual(['Bo', 'Cy'])
})

test('Who is away for a part of it does not count', () => {
  expect(chooseTeam(prepared, { ...step, crew: 4 }, when, new Set())).toBeUndefined()
  expect(chooseTeam(prepared, { ...step, crew: 4 }, { start: at(10), end: at(11) }, new Set())).toHaveLength(
    4,
  )
})

test('A hold takes nobody', () => {
  expect(chooseTeam(prepared, { kind: 'hold', minutes: 60 }, when, new Set())).toEqual([])
})
