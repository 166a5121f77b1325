// Groups kept apart, pH bounds, and the nine tenths of a limit: common practice, no source; the data sheet and the local
// code decide. Products are invented.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type DataSheet,
  flammableStock,
  liftAdvice,
  readUnNumber,
  type ShelvedProduct,
  sheetDoubts,
  silences,
  storageGroupNamed,
  storageGroups,
  storageGroupWords,
  storageWarnings,
  suggestGroup,
  transportEntry,
  whyApart,
} from '../../../main/domain/hazard/index.ts'

const shelved = (id: string, group: ShelvedProduct['group'], place = 'shelf A'): ShelvedProduct => ({
  id,
  name: `Product ${id}`,
  group,
  place,
})

describe('storage', () => {
  it('warns of each clashing pair that stands together, and of none that does not', () => {
    const warnings = storageWarnings([
      shelved('1', 'acid'),
      shelved('2', 'bleach'),
      shelved('3', 'general'),
      shelved('4', 'flammable', 'cabinet'),
      shelved('5', 'oxidiser', 'store room'),
    ])
    expect(warnings).toEqual([
      {
        place: 'shelf A',
        ids: ['1', '2'],
        message:
          'Product 1 and Product 2 stand together in shelf A: together they set poisonous chlorine gas free. ' +
          'Keep them apart; the data sheets decide.',
      },
    ])
  })

  it('says so where nobody has entered a group and something stands beside it', () => {
    expect(storageWarnings([shelved('1', null), shelved('2', 'general')])).toMatchObject([
      { ids: ['1'], message: expect.stringContaining('nobody has entered') },
    ])
    expect(storageWarnings([shelved('1', null)])).toEqual([])
  })

  it('warns the same of products in any order, and never of a product beside its like', () => {
    const group = fc.constantFrom(...storageGroups)
    fc.assert(
      fc.property(fc.array(group, { maxLength: 8 }), groups => {
        const products = groups.map((each, i) => shelved(String(i), each))
        const pairs = (list: readonly ShelvedProduct[]) =>
          storageWarnings(list)
            .map(warning => warning.ids.toSorted().join())
            .sort()
        expect(pairs(products.toReversed())).toEqual(pairs(products))
      }),
    )
    for (const each of storageGroups) expect(whyApart(each, each)).toBeNull()
    for (const each of storageGroups) expect(whyApart('general', each)).toBeNull()
  })

  it('finds a group for its own words and refuses words that name none', () => {
    for (const group of storageGroups) expect(storageGroupNamed(storageGroupWords[group])).toBe(group)
    expect(storageGroupNamed('water-based acid cleaner')).toBe('acid')
    expect(() => storageGroupNamed('blue stuff')).toThrow(
      expect.objectContaining({ code: 'storage-group-unknown', value: 'blue stuff' }),
    )
  })

  it('suggests a group from codes and pH, and none where they do not tell', () => {
    expect(suggestGroup(['H225', 'H319'])).toBe('flammable')
    expect(suggestGroup(['H222', 'H229'])).toBe('aerosol')
    expect(suggestGroup(['EUH031', 'H314'], 12.5)).toBe('bleach')
    expect(suggestGroup(['H242', 'H317'])).toBe('peroxide')
    expect(suggestGroup(['H272', 'H314'])).toBe('oxidiser')
    expect(suggestGroup(['H314'], 1.5)).toBe('acid')
    expect(suggestGroup(['H314'], 13)).toBe('alkali')
    expect(suggestGroup(['H314'])).toBeNull()
    expect(suggestGroup(['H412'], 7)).toBe('general')
    expect(suggestGroup([])).toBeNull()
  })
})

describe('flammable stock', () => {
  const show = (volumeMl: number) => `${volumeMl} mL`
  const products = [
    { id: 'wipe', volumeMl: 4000, codes: ['H225', 'H319'] },
    { id: 'coat', volumeMl: 500, codes: ['H226'] },
    { id: 'can', volumeMl: 400, codes: ['H222', 'H229'] },
    { id: 'wash', volumeMl: 20000, codes: ['H318'] },
    { id: 'blank', volumeMl: 750, codes: null },
  ]

  it('adds up flammable liquids only, and tells what it could not count', () => {
    expect(flammableStock(products, 5000, show)).toEqual({
      totalMl: 4500,
      byCode: { H224: 0, H225: 4000, H226: 500 },
      aerosolMl: 400,
      silentIds: ['blank'],
      silentMl: 750,
      limitMl: 5000,
      share: 0.9,
      state: 'near',
      message:
        '4500 mL of flammable liquid on the shelf, close to your limit of 5000 mL. Not counted: 750 mL in one product ' +
        'whose data sheet is silent or missing. The local code decides.',
    })
  })

  it('has no limit of its own', () => {
    expect(flammableStock(products, null, show)).toMatchObject({ state: 'no limit', share: null })
    expect(flammableStock(products, 4499, show).state).toBe('over')
    expect(flammableStock(products, 9000, show).state).toBe('within')
  })

  it('refuses a limit of nothing and a negative stock', () => {
    expect(() => flammableStock([], 0, show)).toThrow(expect.objectContaining({ field: 'limitMl' }))
    expect(() => flammableStock([{ id: 'x', volumeMl: -1, codes: [] }], 1, show)).toThrow(
      expect.objectContaining({ field: 'products.0.volumeMl' }),
    )
  })
})

describe('a data sheet', () => {
  const full: DataSheet = {
    revisedOn: '2026-01-15',
    hazardCodes: ['H225', 'H319'],
    precautionaryCodes: ['P210', 'P280'],
    signalWord: 'Danger',
    protection: ['nitrile gloves'],
    storageGroup: 'flammable',
    storageMinC: 5,
    storageMaxC: 25,
    lifeAfterOpeningDays: 'unlimited',
    unNumber: 'UN1993',
  }

  it('that says everything leaves nothing to say; what it does not say is named', () => {
    expect(silences(full)).toEqual([])
    // "None" is something the sheet says; silence is not.
    expect(silences({ ...full, hazardCodes: [], signalWord: 'none', protection: [] })).toEqual([])
    expect(silences({ ...full, protection: null, storageMaxC: null }).map(({ field }) => field)).toEqual([
      'protection',
      'storageMaxC',
    ])
    expect(silences({ ...full, protection: null })[0]!.message).toMatch(/silent on protective equipment/)
  })

  it('that contradicts itself is doubted, never corrected', () => {
    expect(sheetDoubts(full, 'eu-clp')).toEqual([])
    expect(sheetDoubts({ ...full, signalWord: 'Warning' }, 'eu-clp')).toEqual([
      expect.stringContaining('Danger'),
    ])
    // The category decides H228's word, so that either is believed.
    for (const signalWord of ['Danger', 'Warning'] as const)
      expect(sheetDoubts({ ...full, hazardCodes: ['H228'], signalWord }, 'eu-clp')).toEqual([])
    expect(sheetDoubts({ ...full, storageMinC: 30, hazardCodes: ['H225', 'h225'] }, 'eu-clp')).toEqual([
      expect.stringContaining('30 °C'),
      'H225 is entered twice.',
    ])
    expect(sheetDoubts({ ...full, hazardCodes: ['H412'], signalWord: 'none' }, 'eu-clp')).toEqual([])
  })
})

describe('transport and lifting', () => {
  it('read a UN number as people write it', () => {
    expect(['1263', 'un 1263', 'UN-1263', ' UN1263 '].map(text => readUnNumber(text))).toEqual(
      Array(4).fill('UN1263'),
    )
    expect(() => readUnNumber('12634')).toThrow(expect.objectContaining({ code: 'un-number-bad' }))
    expect(transportEntry('UN0004')).toBeNull()
    expect(() => transportEntry('UN1090', 'III')).toThrow(/packing group II, not III/)
    expect(() => transportEntry('UN1950', 'II')).toThrow(/no packing group/)
  })

  it('refuse a lift that is none', () => {
    const lift = {
      horizontalCm: 40,
      verticalCm: 30,
      travelCm: 50,
      asymmetryDeg: 0,
      frequencyMultiplier: 1,
      couplingMultiplier: 1,
      loadKg: 10,
    }
    expect(() => liftAdvice({ ...lift, couplingMultiplier: 1.2 })).toThrow(
      expect.objectContaining({ field: 'couplingMultiplier' }),
    )
    expect(() => liftAdvice({ ...lift, loadKg: Number.NaN })).toThrow(
      expect.objectContaining({ field: 'loadKg' }),
    )
  })
})
