// Wording: CLP annexes III and IV, read in a public transcription; UN and OSHA spellings from memory.
import { describe, expect, it } from 'vitest'
import { hazardsOfCode } from '../../../main/domain/hazard/classes.ts'
import { hazardStatement, normaliseCode, type Regime } from '../../../main/domain/hazard/index.ts'
import { everyHazard } from './hazardNamed.ts'

const regimes: readonly Regime[] = ['un-ghs', 'eu-clp', 'us-osha']

describe('hazard statements', () => {
  it('have words in every regime', () => {
    for (const { code } of everyHazard)
      for (const regime of regimes) expect(hazardStatement(code, regime).length).toBeGreaterThan(8)
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
