import { expect, it } from 'vitest'
import { conditionPercent } from '../../../main/domain/treatment/index.ts'

const byWork = { steps: [{ byCondition: false }, { byCondition: true }] } as unknown as Parameters<
  typeof conditionPercent
>[0]
const alike = { steps: [{ byCondition: false }] } as unknown as typeof byWork
const dearer = { wornPercent: '10', heavyPercent: '25' }

it('is what the shop has set, where the work depends on the condition, and nothing for good paint', () => {
  expect(conditionPercent(byWork, 'good', dearer)).toBe('0')
  expect(conditionPercent(byWork, 'worn', dearer)).toBe('10')
  expect(conditionPercent(byWork, 'heavy', dearer)).toBe('25')
  for (const condition of ['good', 'worn', 'heavy'] as const)
    expect(conditionPercent(alike, condition, dearer)).toBe('0')
})
