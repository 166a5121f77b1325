import { expect, test } from 'vitest'
import { impossibleSteps } from '../../../main/domain/schedule/impossible.ts'
import type { Step } from '../../../main/domain/schedule/types.ts'
import { example } from './example.ts'

const wash: Step = { kind: 'work', minutes: 60, needs: 'wet', skill: 'wash', crew: 1, split: false }
const found = (step: Step) => impossibleSteps({ ...example, newJob: { ...example.newJob, steps: [step] } })

test('What the shop can do is not named, however full it is', () => {
  expect(impossibleSteps(example)).toEqual([])
})

test('No bay, no team, no opening long enough', () => {
  expect(found({ ...wash, needs: 'spray' })).toEqual([{ code: 'noBay', step: 0, capability: 'spray' }])
  expect(found({ ...wash, crew: 2 })).toEqual([
    { code: 'noSkill', step: 0, skill: 'wash', minutes: 2, limit: 1 },
  ])
  expect(found({ ...wash, minutes: 601 })).toEqual([{ code: 'tooLong', step: 0, minutes: 601, limit: 600 }])
})

test('Work that may pause has all openings', () => {
  expect(found({ ...wash, minutes: 1200, split: true })).toEqual([])
  expect(found({ ...wash, minutes: 1201, split: true })).toEqual([
    { code: 'tooLong', step: 0, minutes: 1201, limit: 1200 },
  ])
})
