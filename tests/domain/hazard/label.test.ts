// UN GHS 1.4.10.5.3, CLP article 26(1), 29 CFR 1910.1200 C.2.1: read in public copies.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Hazard,
  hazardCodes,
  hazardNamed,
  hazardsOfCode,
  labelFromCodes,
  labelOf,
  type Regime,
  regimes,
} from '../../../main/domain/hazard/index.ts'

const every = hazardCodes.flatMap(code => hazardsOfCode(code))
const some = fc.subarray(every, { minLength: 1, maxLength: 8 })
const regime = fc.constantFrom(...regimes)
const rank = { Danger: 2, Warning: 1, none: 0 }
const named = (...words: string[]) => words.map(word => hazardNamed(word))

describe('a label', () => {
  it('does not depend on the order of hazards, nor on saying one twice', () => {
    fc.assert(
      fc.property(some, regime, (hazards, whose) => {
        const label = labelOf(hazards, whose)
        expect(labelOf(hazards.toReversed(), whose)).toMatchObject({
          pictograms: label.pictograms,
          signalWord: label.signalWord,
          mayDrop: label.mayDrop,
        })
        expect(labelOf([...hazards, ...hazards], whose)).toEqual(label)
      }),
    )
  })

  it('never says less for one hazard more', () => {
    fc.assert(
      fc.property(some, fc.constantFrom(...every), regime, (hazards, another, whose) => {
        const word = (list: readonly Hazard[]) => rank[labelOf(list, whose).signalWord ?? 'none']
        expect(word([...hazards, another])).toBeGreaterThanOrEqual(word(hazards))
      }),
    )
  })

  it('shows every pictogram called for, or says which rule gave the exclamation mark up', () => {
    fc.assert(
      fc.property(some, fc.constantFrom<Regime>('un-ghs', 'eu-clp'), (hazards, whose) => {
        const label = labelOf(hazards, whose)
        const missing = new Set(
          hazards.flatMap(hazard => hazard.pictograms).filter(code => !label.pictograms.includes(code)),
        )
        expect([...missing]).toEqual(label.givenUp.length > 0 ? ['GHS07'] : [])
        for (const code of label.mayDrop) expect(label.pictograms).toContain(code)
      }),
    )
  })

  it('differs by regime where the rules do', () => {
    // OSHA keeps the mark under the skull for anything but acute toxicity; the UN and CLP do not.
    const skull = named('acute toxicity oral 3', 'skin irritation 2')
    expect(regimes.map(whose => labelOf(skull, whose).pictograms.join())).toEqual([
      'GHS06',
      'GHS06',
      'GHS06,GHS07',
    ])
    // The environment is outside OSHA's standard.
    const fish = named('aquatic acute 1')
    expect(regimes.map(whose => labelOf(fish, whose))).toMatchObject([
      { pictograms: ['GHS09'], signalWord: 'Warning' },
      { pictograms: ['GHS09'], signalWord: 'Warning' },
      { pictograms: [], signalWord: null },
    ])
  })

  it('lets CLP makers leave out what article 26 allows, and nothing one hazard asks for twice over', () => {
    const bomb = named('explosive 1.1', 'flammable liquid 2', 'oxidising liquid 2')
    expect(labelOf(bomb, 'eu-clp').mayDrop).toEqual(['GHS02', 'GHS03'])
    expect(labelOf(bomb, 'un-ghs').mayDrop).toEqual([])
    expect(labelOf(named('organic peroxide B'), 'eu-clp')).toMatchObject({
      pictograms: ['GHS01', 'GHS02'],
      mayDrop: [],
    })
  })
})

describe('a label from codes alone', () => {
  it('says which codes leave the word or the pictogram open', () => {
    const label = labelFromCodes(['H228', 'H302', 'EUH066'], 'un-ghs')
    expect(label.unsure).toEqual(['H228'])
    expect(label.signalWord).toBe('Warning')
    expect(label.statements).toEqual([
      { code: 'H228', text: 'Flammable solid' },
      { code: 'H302', text: 'Harmful if swallowed' },
      { code: 'EUH066', text: 'Repeated exposure may cause skin dryness or cracking' },
    ])
  })

  it('takes joined codes apart for the pictograms and keeps them joined for the words', () => {
    expect(labelFromCodes(['H301+H311', 'H400', 'H410'], 'eu-clp')).toMatchObject({
      pictograms: ['GHS06', 'GHS09'],
      signalWord: 'Danger',
      statements: [
        { code: 'H301+H311', text: 'Toxic if swallowed or in contact with skin' },
        { code: 'H410', text: 'Very toxic to aquatic life with long lasting effects' },
      ],
    })
  })

  it('refuses a code that does not exist', () => {
    expect(() => labelFromCodes(['H225', 'H999'], 'un-ghs')).toThrow(/copy the H codes from section 2/)
  })
})
