import { describe, expect, it } from 'vitest'
import { coatConditions, commonPracticeProfile, leastPanelC } from '../../../main/domain/cure/index.ts'
import { sheetProfile } from './profiles.ts'

// The sheet wants 10 to 30 °C and 30 to 75 %.
const codes = (airC: number, humidityPercent: number, panelC: number | null) =>
  coatConditions(sheetProfile, { airC, humidityPercent, panelC }).warnings.map(({ code }) => code)

describe('the conditions a coat is laid in', () => {
  it.each([
    [20, 50, 20, []],
    [10, 30, 10, []],
    [30, 75, 30, []],
    [9.9, 50, 12, ['air-cold']],
    [12, 50, 9, ['panel-cold']],
    [30.1, 40, 28, ['air-hot']],
    [28, 40, 31, ['panel-hot']],
    [20, 29, 20, ['air-dry']],
    [20, 76, 20, ['air-damp']],
    [20, 75, 18, ['dew-margin']],
    [20, 50, null, ['panel-unmeasured']],
    [5, 95, 5, ['air-cold', 'panel-cold', 'air-damp', 'dew-margin']],
  ])('air %s °C at %s %%, panel %s °C: %j', (airC, humidity, panelC, expected) => {
    expect(codes(airC, humidity, panelC)).toEqual(expected)
  })

  it('takes a panel exactly 3 °C above the dew point (ISO 8502-4, rule from memory)', () => {
    const least = leastPanelC(20, 60)
    expect(codes(20, 60, least)).toEqual([])
    expect(codes(20, 60, least - 0.001)).toEqual(['dew-margin'])
  })

  it('names value, limit and source of the rule', () => {
    const { warnings, marginC, dewC } = coatConditions(sheetProfile, {
      airC: 31,
      humidityPercent: 74,
      panelC: 25,
    })
    expect(warnings).toEqual([
      { code: 'air-hot', value: 31, limit: 30, source: 'data sheet' },
      { code: 'dew-margin', value: marginC, limit: 3, source: 'ISO 8502-4' },
    ])
    expect(marginC).toBeCloseTo(25 - dewC, 12)
    const practice = coatConditions(commonPracticeProfile(), { airC: 35, humidityPercent: 50, panelC: 30 })
    expect(practice.warnings[0]).toMatchObject({ code: 'air-hot', source: 'common practice' })
    expect(coatConditions(sheetProfile, { airC: 20, humidityPercent: 50, panelC: null }).marginC).toBeNull()
  })
})
