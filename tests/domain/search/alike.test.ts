import fc from 'fast-check'
import { expect, test } from 'vitest'
import { likelihood, likeness, type Marks } from '../../../main/domain/search/index.ts'

const text = fc.constantFrom(
  '',
  'Ann Lee',
  'lee ann',
  'Zoë Ångström',
  'Zoe Angstrm',
  'KFR 2O4',
  'kfr204',
  '+12125550143',
)
const marks: fc.Arbitrary<Marks> = fc.record({
  name: text,
  phones: fc.array(text, { maxLength: 2 }),
  emails: fc.array(text, { maxLength: 2 }),
  plates: fc.array(text, { maxLength: 2 }),
  vins: fc.array(text, { maxLength: 2 }),
})

test('two are alike whichever is looked at first, and each is like themselves in all they have', () => {
  fc.assert(
    fc.property(marks, marks, (a, b) => {
      expect(new Set(likeness(a, b))).toEqual(new Set(likeness(b, a)))
      const own = likeness(a, a)
      expect(own.includes('name')).toBe(a.name !== '')
      expect(own.includes('phone')).toBe(a.phones.some(Boolean))
      expect(likelihood(likeness(a, b))).toBeLessThanOrEqual(likelihood(own) + 1)
    }),
  )
})

// Common practice, no source.
test('a short name is another after one slip', () => {
  const named = (name: string): Marks => ({ name, phones: [], emails: [], plates: [], vins: [] })
  expect(likeness(named('Ana'), named('Ada'))).toEqual([])
  expect(likeness(named('Hana Okoro'), named('Hana Okoru'))).toEqual(['much the same name'])
})
