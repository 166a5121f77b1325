/** Magnus constants, dew points, the 3 °C rule: each case in the two files names its source and provenance. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  humidityPercentOf,
  type MagnusConstants,
  saturationHpa,
  sonntag1990,
} from '../../../main/domain/cure/dewPoint.ts'
import {
  coatConditions,
  commonPracticeProfile,
  dewPointC,
  leastMarginC,
  leastPanelC,
} from '../../../main/domain/cure/index.ts'
import { celsiusOf, fahrenheitOf } from '../../../main/domain/measure/index.ts'
import { differenceFahrenheitOf } from '../../../main/domain/measure/temperature.ts'
import first from '../../reference/dewpoint.json' with { type: 'json' }
import second from '../../reference/sourced/dewpoint.json' with { type: 'json' }

// Alduchov and Eskridge 1996, J. Appl. Meteor. 35, 601-609: the same formula with other constants.
const alduchov: MagnusConstants = { hPa: 6.1094, a: 17.625, bC: 243.04 }

interface Case {
  id: string
  // biome-ignore lint/suspicious/noExplicitAny: every kind of case has its own shape
  input: any
  // biome-ignore lint/suspicious/noExplicitAny: see above
  expected: any
}

/** Margin and verdict as a coat step gets them, in the middle of the profile's own ranges or not. */
function rule(airC: number, humidity: number, surfaceC: number) {
  const { marginC, warnings } = coatConditions(commonPracticeProfile(), {
    airC,
    humidityPercent: humidity,
    panelC: surfaceC,
  })
  return { marginC: marginC!, allowed: !warnings.some(({ code }) => code === 'dew-margin') }
}

const kinds: Record<string, (input: Case['input'], expected: Case['expected']) => Record<string, unknown>> = {
  'dew-point': ({ airC, relativeHumidityPercent: humidity }) => ({
    sonntagC: dewPointC(airC, humidity),
    alduchovEskridgeC: dewPointC(airC, humidity, alduchov),
  }),
  dew: ({ airC, relativeHumidity }) => ({
    sonntag: dewPointC(airC, relativeHumidity),
    alduchovEskridge: dewPointC(airC, relativeHumidity, alduchov),
  }),
  table: ({ airC, relativeHumidity }) => ({ dewPointC: dewPointC(airC, relativeHumidity) }),
  margin: ({ airC, relativeHumidity, surfaceC }) => {
    const { marginC, allowed } = rule(airC, relativeHumidity, surfaceC)
    return { marginC, coatingAllowed: allowed }
  },
  'magnus-against-iapws': ({ airC, relativeHumidityPercent }) => ({
    dewPointC: dewPointC(airC, relativeHumidityPercent),
  }),
  // The IAPWS figure is there to compare with: the two forms are within a quarter of a per cent of it.
  'saturation-pressure': ({ celsius }, { iapwsHpa }) => {
    expect(Math.abs(saturationHpa(celsius) / iapwsHpa - 1)).toBeLessThan(0.003)
    return {
      sonntagHpa: saturationHpa(celsius, sonntag1990),
      alduchovEskridgeHpa: saturationHpa(celsius, alduchov),
      iapwsHpa,
    }
  },
  'dew-point-fahrenheit': ({ airF, relativeHumidityPercent }) => ({
    sonntagF: fahrenheitOf(dewPointC(celsiusOf(airF), relativeHumidityPercent)),
  }),
  'least-surface-temperature': ({ airC, relativeHumidityPercent, marginC }) => {
    expect(marginC).toBe(leastMarginC)
    const leastSurfaceC = leastPanelC(airC, relativeHumidityPercent)
    return { leastSurfaceC, leastSurfaceF: fahrenheitOf(leastSurfaceC) }
  },
  'three-degree-rule': ({ airC, relativeHumidityPercent, surfaceC }) =>
    rule(airC, relativeHumidityPercent, surfaceC),
  'three-degree-rule-fahrenheit': ({ airF, relativeHumidityPercent, surfaceF }) => {
    const { marginC, allowed } = rule(celsiusOf(airF), relativeHumidityPercent, celsiusOf(surfaceF))
    return { marginF: differenceFahrenheitOf(marginC), allowed }
  },
  'relative-humidity-from-dew-point': ({ airC, dewPointC: dewC }) => ({
    relativeHumidityPercent: humidityPercentOf(airC, dewC),
  }),
  'bad-input': ({ airC, relativeHumidityPercent }, { error }) => {
    expect(() => dewPointC(airC, relativeHumidityPercent)).toThrow(
      expect.objectContaining({ name: 'Refusal', field: 'humidityPercent', value: relativeHumidityPercent }),
    )
    expect(() => dewPointC(airC, relativeHumidityPercent)).toThrow(/must be above 0 and at most 100/)
    return { error }
  },
}

/** As `tolerance` says in words in each case. */
const tolerances: Record<string, number> = {
  'dew-point': 0.001,
  dew: 0.01,
  table: 0.15,
  margin: 0.01,
  'magnus-against-iapws': 0.06,
  'saturation-pressure': 0.0005,
  'three-degree-rule': 0.002,
}

const kindOf = (given: Case & { kind?: string }) => given.kind ?? given.id.split('-')[0]!

describe.each([
  ['dewpoint.json', first.cases as Case[], 18],
  ['sourced/dewpoint.json', second.cases as Case[], 37],
])('%s', (_, cases, count) => {
  it('is whole', () => expect(cases).toHaveLength(count))

  it.each(cases.map(given => [given.id, given] as const))('%s', (_, given) => {
    const kind = kindOf(given)
    const answer = kinds[kind]!(given.input, given.expected)
    expect(Object.keys(answer).sort()).toEqual(Object.keys(given.expected).sort())
    for (const [name, value] of Object.entries(given.expected)) {
      if (typeof value !== 'number') expect(answer[name], name).toBe(value)
      else
        expect(Math.abs((answer[name] as number) - value), name).toBeLessThanOrEqual(tolerances[kind] ?? 0.01)
    }
  })
})

describe('the dew point', () => {
  const air = fc.double({ min: -20, max: 50, noNaN: true })
  const humidity = fc.double({ min: 1, max: 100, noNaN: true })

  it('is never above the air, rises with the humidity, and gives the humidity back', () => {
    fc.assert(
      fc.property(air, humidity, humidity, (airC, a, b) => {
        const dewC = dewPointC(airC, a)
        expect(dewC).toBeLessThanOrEqual(airC + 1e-9)
        expect(humidityPercentOf(airC, dewC)).toBeCloseTo(a, 8)
        if (a < b) expect(dewC).toBeLessThanOrEqual(dewPointC(airC, b))
      }),
    )
  })

  it('3 °C is a difference of 5.4 °F, not 37.4 °F', () => {
    expect(differenceFahrenheitOf(leastMarginC)).toBe(5.4)
  })
})
