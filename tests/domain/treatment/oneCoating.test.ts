import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type CoatingFamily, coatingFamilies } from '../../../main/domain/shop/index.ts'
import { assertOneCoating, coatedTwice } from '../../../main/domain/treatment/index.ts'

const product = (name: string, family: CoatingFamily, kind: 'coating' | 'topper' = 'coating') => ({
  name,
  kind,
  family,
})
const products = new Map([
  ['one', product('Ovrel One', 'paint')],
  ['quick', product('Tamsk Quick', 'paint')],
  ['rim', product('Tamsk Rim', 'wheels')],
  ['veil', product('Ovrel Veil', 'paint', 'topper')],
])
const lays = (name: string, ...ids: (string | null)[]) => ({
  name,
  steps: ids.map(productId => ({ productId })),
})

test('two treatments that both coat the paint are refused, and both are named with their coatings', () => {
  const both = [lays('One layer', null, 'one'), lays('Layer and topper', 'quick', 'veil')]
  expect(() => assertOneCoating(both, products)).toThrow(
    expect.objectContaining({
      code: 'coated-twice',
      field: 'treatmentIds',
      message: expect.stringMatching(
        /^One layer \(Ovrel One\) and Layer and topper \(Tamsk Quick\) both coat the paint: choose one/,
      ),
    }),
  )
  // The same product twice is a layer its sheet does not know of.
  expect(coatedTwice([lays('One layer', 'one'), lays('Two layers', 'one', 'one')], products)?.places).toEqual(
    [0, 1],
  )
})

test('wheels beside paint, layers within one treatment and a topper over it are nothing to refuse', () => {
  const fine = [lays('Two layers', 'one', 'one'), lays('Base and top', 'rim'), lays('Topper', 'veil')]
  expect(() => assertOneCoating(fine, products)).not.toThrow()
  expect(() => assertOneCoating([lays('Base and top', 'one', 'quick')], products)).not.toThrow()
})

test('it is found exactly where two treatments share a family, in whatever order they come', () => {
  const sold = fc.array(fc.array(fc.constantFrom(...coatingFamilies), { maxLength: 3 }), { maxLength: 5 })
  const byFamily = new Map(coatingFamilies.map(family => [family as string, product(family, family)]))
  fc.assert(
    fc.property(sold, families => {
      const treatments = families.map((each, i) => lays(`Treatment ${i}`, ...each))
      const counted = coatingFamilies.map(family => families.filter(each => each.includes(family)).length)
      const twice = counted.some(count => count > 1)
      expect(coatedTwice(treatments, byFamily) !== null).toBe(twice)
      expect(coatedTwice(treatments.toReversed(), byFamily) !== null).toBe(twice)
    }),
  )
})
