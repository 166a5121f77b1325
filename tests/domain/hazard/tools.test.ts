import { expect, it } from 'vitest'
import { toolCautions } from '../../../main/domain/hazard/index.ts'

it('Each stage’s tools are warned of once, and a wash has none', () => {
  const once = toolCautions(['correct'])
  expect(once.length).toBeGreaterThan(0)
  expect(toolCautions(['correct', 'correct'])).toEqual(once)
  expect(toolCautions(['finish'])).toEqual([])
})
