import { expect, it } from 'vitest'
import { checkMeasureSettings, measureRules } from '../../../main/domain/measure/index.ts'

const none = { floorUm: null, gaugeRepeatabilityUm: null, glossAllowedGu: null, glossRepeatabilityGu: null }

it('is as usual where the shop says nothing, and the shop’s own where it does', () => {
  expect(measureRules()).toEqual(measureRules(none))
  expect(measureRules()).toMatchObject({
    thickness: { floorUm: 80, gaugeUm: 3 },
    gaugeRepeatabilityUm: 1,
    glossAllowedGu: 1,
    glossRepeatabilityGu: 0.5,
  })
  expect(
    measureRules({ floorUm: 95, gaugeRepeatabilityUm: 2, glossAllowedGu: 1.5, glossRepeatabilityGu: 0.4 }),
  ).toMatchObject({
    thickness: { floorUm: 95, gaugeUm: 3 },
    gaugeRepeatabilityUm: 2,
    glossAllowedGu: 1.5,
    glossRepeatabilityGu: 0.4,
  })
})

it.each([
  ['floorUm', 39],
  ['floorUm', 301],
  ['gaugeRepeatabilityUm', 0],
  ['gaugeRepeatabilityUm', 21],
  ['glossAllowedGu', 0],
  ['glossAllowedGu', 11],
  ['glossRepeatabilityGu', 0],
  ['glossRepeatabilityGu', 11],
  ['floorUm', Number.NaN],
])('refuses %s of %s', (field, value) => {
  expect(() => checkMeasureSettings(none)).not.toThrow()
  expect(() => checkMeasureSettings({ ...none, floorUm: 40, glossAllowedGu: 10 })).not.toThrow()
  expect(() => checkMeasureSettings({ ...none, [field]: value })).toThrow(expect.objectContaining({ field }))
})
