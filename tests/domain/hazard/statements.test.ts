// Wording: CLP annexes III and IV, read in a public transcription; UN and OSHA spellings from memory.
import { describe, expect, it } from 'vitest'
import {
  hasGap,
  hazardCodes,
  hazardNamed,
  hazardStatement,
  hazardsOfCode,
  normaliseCode,
  precautionaryCodes,
  precautionaryStatement,
  protectionNamed,
  regimes,
} from '../../../main/domain/hazard/index.ts'

describe('hazard statements', () => {
  it('have words in every regime, and those with a class have its label elements', () => {
    for (const code of hazardCodes)
      for (const regime of regimes) expect(hazardStatement(code, regime).length).toBeGreaterThan(8)
    const without = hazardCodes.filter(code => code.startsWith('H') && hazardsOfCode(code).length === 0)
    expect(without).toEqual([])
  })

  it('are spelled as each regime spells them', () => {
    expect(regimes.map(regime => hazardStatement('H272', regime))).toEqual([
      'May intensify fire; oxidizer',
      'May intensify fire; oxidiser',
      'May intensify fire; oxidizer',
    ])
    expect(regimes.map(regime => hazardStatement('H226', regime))).toEqual([
      'Flammable liquid and vapour',
      'Flammable liquid and vapour',
      'Flammable liquid and vapor',
    ])
    expect(hazardStatement('H251', 'un-ghs')).toBe('Self-heating; may catch fire')
    expect(hazardStatement('H251', 'eu-clp')).toBe('Self-heating: may catch fire')
  })

  // CLP annex III, table of joined acute toxicity statements, as transcribed.
  it.each([
    ['H300+H310', 'Fatal if swallowed or in contact with skin'],
    ['H301 + H331', 'Toxic if swallowed or if inhaled'],
    ['H311+331', 'Toxic in contact with skin or if inhaled'],
    ['H302+H312+H332', 'Harmful if swallowed, in contact with skin or if inhaled'],
    ['H303+H333', 'May be harmful if swallowed or if inhaled'],
    ['H315+H320', 'Causes skin and eye irritation'],
  ])('%s reads "%s"', (code, text) => {
    expect(hazardStatement(code)).toBe(text)
  })

  it('of different degree or route do not join', () => {
    for (const code of ['H301+H312', 'H301+H301', 'H225+H319', 'H300+H999', 'H301+'])
      expect(() => hazardStatement(code)).toThrow(expect.objectContaining({ code: 'hazard-code-unknown' }))
  })

  it('are found however the code is written', () => {
    expect(['h225', ' H225 ', 'euh066', 'H360Fd', 'p305 + p351+P338'].map(normaliseCode)).toEqual([
      'H225',
      'H225',
      'EUH066',
      'H360Fd',
      'P305+P351+P338',
    ])
    expect(hazardsOfCode('h360fd')[0]?.className).toBe('Repr. 1A or 1B')
  })
})

describe('precautionary statements', () => {
  // CLP annex IV part 2, joined statements as transcribed.
  it.each([
    ['P231+P232', 'Handle and store contents under inert gas/…. Protect from moisture.'],
    ['P301+P312', 'IF SWALLOWED: Call a POISON CENTER/doctor/… if you feel unwell.'],
    ['P302+P352', 'IF ON SKIN: Wash with plenty of water/…'],
    [
      'P303+P361+P353',
      'IF ON SKIN (or hair): Take off immediately all contaminated clothing. Rinse skin with water [or shower].',
    ],
    ['P308+P313', 'IF exposed or concerned: Get medical advice/attention.'],
    ['P333+P313', 'If skin irritation or rash occurs: Get medical advice/attention.'],
    ['P337+P313', 'If eye irritation persists: Get medical advice/attention.'],
    ['P342+P311', 'If experiencing respiratory symptoms: Call a POISON CENTER/doctor/…'],
    ['P361+P364', 'Take off immediately all contaminated clothing and wash it before reuse.'],
    ['P362+P364', 'Take off contaminated clothing and wash it before reuse.'],
    ['P370+P378', 'In case of fire: Use … to extinguish.'],
    ['P403+P233', 'Store in a well-ventilated place. Keep container tightly closed.'],
    ['P410+P412', 'Protect from sunlight. Do not expose to temperatures exceeding 50 °C/122 °F.'],
  ])('%s reads "%s"', (code, text) => {
    expect(precautionaryStatement(code)).toBe(text)
  })

  it('know which places the maker fills in', () => {
    expect(hasGap(precautionaryStatement('P501'))).toBe(true)
    expect(hasGap(precautionaryStatement('P233'))).toBe(false)
    expect(precautionaryStatement('P261', 'us-osha')).toBe('Avoid breathing dust/fume/gas/mist/vapors/spray.')
  })

  it('that do not exist are refused, alone or joined', () => {
    for (const code of ['P299', 'P301+P999', 'gloves', ''])
      expect(() => precautionaryStatement(code, 'eu-clp', 'precautions.0')).toThrow(
        expect.objectContaining({ code: 'precaution-code-unknown', field: 'precautions.0', value: code }),
      )
  })

  it('name the protective equipment they ask for', () => {
    expect(protectionNamed(['P280', 'P284', 'P210', 'p280'])).toEqual([
      'gloves',
      'protective clothing',
      'eye protection',
      'face protection',
      'respiratory protection',
    ])
    expect(precautionaryCodes.filter(code => precautionaryStatement(code).includes('Wear '))).toEqual([
      'P280',
      'P282',
      'P283',
    ])
  })
})

it('a hazard class is named in words, in either spelling, and refused otherwise', () => {
  expect(hazardNamed('Oxidizing liquid 2').code).toBe('H272')
  expect(hazardNamed('germ cell mutagenicity 1B').code).toBe('H340')
  expect(hazardNamed('gas under pressure').code).toBe('H280')
  expect(() => hazardNamed('flammable liquid 9')).toThrow(
    expect.objectContaining({ code: 'hazard-class-unknown', value: 'flammable liquid 9' }),
  )
})
