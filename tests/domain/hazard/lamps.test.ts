import { expect, test } from 'vitest'
import { lampCautions } from '../../../main/domain/hazard/index.ts'

test('flash-off comes first, the ceiling goes by what lies beneath, eyes and heat are named, others decide', () => {
  // Ceilings: common practice, no source. 80, 60 and 50 °C are 176, 140 and 122 °F.
  const metric = lampCautions('metric')
  expect(metric[0]).toContain('flash off first')
  expect(metric[1]).toContain(
    '80 °C on painted metal, 60 °C on plastic, 50 °C on film (common practice, no source)',
  )
  expect(lampCautions('us')[1]).toContain('176 °F on painted metal, 140 °F on plastic, 122 °F on film')
  expect(metric[2]).toMatch(/Do not look into the lamp.*burn the skin/)
  expect(metric.at(-1)).toMatch(/data sheet.*local codes and licensed practice decide/)
})
