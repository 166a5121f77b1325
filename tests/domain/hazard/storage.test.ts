// Groups kept apart, pH bounds, and the nine tenths of a limit: common practice, no source; the data sheet and the local
// code decide. Products are invented.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { storageGroups, storageWarnings, suggestGroup } from '../../../main/domain/hazard/index.ts'
import { type ShelvedProduct, whyApart } from '../../../main/domain/hazard/storage.ts'

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

  it('keeps an iron fallout remover and a fluoride from acids and bleaches, each for its own reason', () => {
    // Common practice, no source.
    expect(whyApart('thioglycolate', 'acid')).toContain('hydrogen sulphide')
    expect(whyApart('bleach', 'thioglycolate')).not.toBeNull()
    expect(whyApart('thioglycolate', 'alkali')).toBeNull()
    expect(whyApart('acid', 'fluoride')).toContain('hydrogen fluoride')
    expect(whyApart('fluoride', 'flammable')).not.toBeNull()
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
    // Hydrogen fluoride's own statements (CLP annex VI, from memory): no acid like another, so nothing is suggested.
    expect(suggestGroup(['H300', 'H310', 'H330', 'H314'], 2)).toBeNull()
    expect(suggestGroup(['H301', 'H314'], 4.5)).toBeNull()
    expect(suggestGroup([])).toBeNull()
  })
})
