import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bayFeatures, checkOffers, meetsNeeds, needsKey, needsOf } from '../../../main/domain/shop/index.ts'

test('names are kept in small letters, each once, and without what joins them', () => {
  expect(checkOffers(['Lift', ' lift ', 'Film  room'], 'offers')).toEqual(['film room', 'lift'])
  expect(() => checkOffers(['a+b'], 'offers')).toThrow(expect.objectContaining({ code: 'offer-bad' }))
  expect(() => checkOffers(Array(21).fill('x'), 'offers')).toThrow(
    expect.objectContaining({ code: 'offers-many' }),
  )
  expect(() => checkOffers([' '], 'offers')).toThrow(expect.objectContaining({ field: 'offers' }))
})

test('one word stands for a set: in any order, and met by a bay that has them all and no other', () => {
  const some = fc.subarray([...bayFeatures, 'film room'])
  let met = 0
  fc.assert(
    fc.property(some, some, (asks, has) => {
      const key = needsKey('clean', asks)
      expect(needsKey('clean', [...asks, ...asks].reverse())).toBe(key)
      expect(needsOf(key).toSorted()).toEqual(['clean', ...asks].toSorted())
      expect(needsKey(needsOf(key)[0]!, needsOf(key).slice(1))).toBe(key)
      const all = asks.every(ask => has.includes(ask))
      expect(meetsNeeds(['clean', ...has], key)).toBe(all)
      expect(meetsNeeds(has, key)).toBe(false)
      if (all) met++
    }),
  )
  expect(met).toBeGreaterThan(0)
  expect(needsKey('clean')).toBe('clean')
})
