import { expect, test } from 'vitest'
import { foldText, likelySame, nameKey } from '../../../main/domain/vehicle/index.ts'

const hana = { name: 'Hana Okoro', phone: '+12125550143', email: 'hana@example.com' }

// Common practice, no source: what a front desk takes for one person.
test.each([
  ['the same phone', { phone: '+12125550143', email: null }, true],
  ['the same address, capitals aside', { phone: null, email: 'Hana@Example.com' }, true],
  ['neither phone nor address', { phone: null, email: null }, true],
  ['capitals, accents and spaces aside', { name: ' hana  OKÓRO' }, true],
  ['another phone and no address', { phone: '+12125550199', email: null }, false],
  ['another phone and another address', { phone: '+12125550199', email: 'other@example.com' }, false],
  ['another name with the same phone', { name: 'Ines Okoro' }, false],
])('with %s', (_, change, same) => {
  expect(likelySame(hana, { ...hana, ...change })).toBe(same)
  expect(likelySame({ ...hana, ...change }, hana)).toBe(same)
})

test('two of one name who left nothing are likely one', () => {
  const nobody = { name: 'Hana', phone: null, email: null }
  expect(likelySame(nobody, nobody)).toBe(true)
})

test('folded text has neither accents nor capitals nor double spaces', () => {
  expect(foldText('  Zoë   ÅNGSTRÖM ')).toBe('zoe angstrom')
})

test.each([
  ['Ångström, Zoë', 'zoe angstrom'],
  ['O’Hara Ines', "Ines O'Hara"],
  ['Kestrel  Fleet Ltd.', 'kestrel fleet ltd'],
])('a name is the same in any order, accent and sign: %s', (one, other) => {
  expect(nameKey(one)).toBe(nameKey(other))
  expect(nameKey(one)).not.toBe(nameKey(`${other} Jr`))
})
