import { expect, test } from 'vitest'
import { rulesOf, without } from '../../../main/domain/schedule/relax.ts'
import { at, example } from './example.ts'

test('Listed are the rules that are there', () => {
  expect(rulesOf(example)).toEqual([
    { kind: 'bay', bay: 'clean' },
    { kind: 'skill', skill: 'wash' },
    { kind: 'skill', skill: 'coat' },
    { kind: 'cure', step: 2 },
    { kind: 'onlyBay', step: 2 },
    { kind: 'hours' },
    { kind: 'horizon' },
  ])
})

test('Each rule is dropped by itself', () => {
  expect(without(example, { kind: 'bay', bay: 'clean' })).toEqual({ ...example, fixed: [] })
  expect(without(example, { kind: 'hours' }).open).toEqual([{ from: at(8), to: at(48) }])
  expect(without(example, { kind: 'cure', step: 2 }).newJob.steps.map(({ minutes }) => minutes)).toEqual([
    60, 90, 1,
  ])
  expect(without(example, { kind: 'onlyBay', step: 2 }).newJob.steps[2]?.sameBay).toBe(false)
  expect(
    without(example, { kind: 'skill', skill: 'coat' }).newJob.steps.map(
      step => step.kind === 'work' && step.skill,
    ),
  ).toEqual(['wash', null, false])
})

test('A longer horizon is open throughout', () => {
  const longer = without(example, { kind: 'horizon' })
  expect(longer.horizon).toBeGreaterThan(example.horizon)
  expect(longer.open.at(-1)).toEqual({ from: example.horizon, to: longer.horizon })
})
