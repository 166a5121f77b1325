import { expect, test } from 'vitest'
import { bindingOf, opening } from '../../../main/domain/schedule/bindings.ts'
import { at, example } from './example.ts'

/** What the shop could do if the clean bay were free all day. */
const better = {
  steps: [
    { bay: 'wash', start: at(8), end: at(9), crew: ['Jo'] },
    { bay: 'clean', start: at(9), end: at(10, 30), crew: ['Jo'] },
    { bay: 'clean', start: at(10, 30), end: at(14, 30), crew: [] },
  ],
  handover: at(14, 30),
}
const any = { kind: 'any' } as const

test('A bay binds by the last booking the better plan runs into', () => {
  expect(bindingOf(example, any, { kind: 'bay', bay: 'clean' }, better)).toEqual({
    code: 'bayTaken',
    bay: 'clean',
    from: at(8),
    to: at(11),
  })
})

test('A skill binds until somebody has the time', () => {
  const crew = [{ id: 'Jo', skills: ['wash', 'coat'], away: [{ from: at(9), to: at(12) }] }]
  expect(bindingOf({ ...example, crew }, any, { kind: 'skill', skill: 'coat' }, better)).toEqual({
    code: 'crewBusy',
    step: 1,
    skill: 'coat',
    minutes: 1,
    from: at(9),
    to: at(12),
  })
})

test('A cure that ends at night is told with the next opening', () => {
  expect(bindingOf(example, any, { kind: 'cure', step: 2 }, better)).toEqual({
    code: 'cure',
    step: 2,
    from: at(14, 30),
  })
  expect(opening(example, at(20))).toEqual({ to: at(32) })
  // The closing minute still lets a car out.
  expect(opening(example, at(18))).toEqual({})
})
