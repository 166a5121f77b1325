// UN GHS 1.4.10.5.3, CLP article 26(1), 29 CFR 1910.1200 C.2.1: read in public copies.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Hazard, hazardsOfCode } from '../../../main/domain/hazard/classes.ts'
import { labelFromCodes, type Regime } from '../../../main/domain/hazard/index.ts'
import { labelOf } from '../../../main/domain/hazard/label.ts'
import { everyHazard as every, hazardNamed } from './hazardNamed.ts'

const regimes: readonly Regime[] = ['un-ghs', 'eu-clp', 'us-osha']
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
    expect(label.signalWord).toBe('Danger')
    expect(label.statements).toEqual([
      { code: 'H228', text: 'Flammable solid' },
      { code: 'H302', text: 'Harmful if swallowed' },
      { code: 'EUH066', text: 'Repeated exposure may cause skin dryness or cracking' },
    ])
  })

  // UN GHS annex 1, from memory: flammable solids 1 (Danger) and 2 (Warning) share a code, as do flammable gases 1B
  // (flame, Danger) and 2 (no pictogram, Warning).
  it.each([
    [['H228'], null, 'Danger', 'GHS02', ['H228']],
    [['H228'], 'Warning', 'Warning', 'GHS02', []],
    [['H228'], 'Danger', 'Danger', 'GHS02', []],
    [['H228', 'H225'], 'Danger', 'Danger', 'GHS02', []],
    [['H221'], null, 'Danger', 'GHS02', ['H221']],
    [['H221'], 'Warning', 'Warning', '', []],
    // The word may be another hazard's: whether the flame is called for stays open.
    [['H221', 'H280', 'H330'], 'Danger', 'Danger', 'GHS02,GHS04,GHS06', ['H221']],
    // The sheet contradicts its own codes: nothing is taken off.
    [['H225'], 'Warning', 'Danger', 'GHS02', []],
    [['H225'], 'none', 'Danger', 'GHS02', []],
  ] as const)('%j on a sheet that says %s', (codes, sheetWord, signalWord, pictograms, unsure) => {
    const label = labelFromCodes(codes, 'un-ghs', sheetWord)
    expect(label).toMatchObject({ signalWord, unsure })
    expect(label.pictograms.join()).toBe(pictograms)
  })

  it('takes the strictest of the categories a code leaves open', () => {
    const open = [...new Set(every.map(({ code }) => code))]
      .map(code => hazardsOfCode(code))
      .filter(hazards => hazards.length > 1)
    for (const [first, ...others] of open)
      for (const other of others) {
        expect(rank[first!.signalWord ?? 'none']).toBeGreaterThanOrEqual(rank[other.signalWord ?? 'none'])
        expect(first!.pictograms).toEqual(expect.arrayContaining([...other.pictograms]))
      }
    expect(open.map(([first]) => first!.code).join(' ')).toBe(
      'H207 H221 H228 H240 H241 H242 H250 H261 H271 H272',
    )
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
