import { expect, test } from 'vitest'
import {
  checkBay,
  checkConditionFactors,
  checkCrewMember,
  checkGrid,
  checkShop,
  gridChoices,
  usualConditionFactors,
} from '../../../main/domain/shop/index.ts'

const shop = {
  name: 'Ashdown Paint Care',
  zone: 'Europe/Berlin',
  currency: 'EUR',
  country: 'DE',
  weekly: [{ weekday: 1, from: 480, to: 1080 }],
}

test('a shop that can keep its promises is let through', () => {
  expect(() => checkShop(shop)).not.toThrow()
})

test.each([
  ['name', { name: '' }],
  ['zone', { zone: 'Europe/Atlantis' }],
  ['currency', { currency: 'eur' }],
  ['country', { country: 'Germany' }],
  ['weekly', { weekly: [] }],
  ['weekly.0.to', { weekly: [{ weekday: 1, from: 480, to: 480 }] }],
])('a wrong %s is refused by that name', (field, change) => {
  expect(() => checkShop({ ...shop, ...change })).toThrow(expect.objectContaining({ field }))
})

test('the grid divides the hour', () => {
  for (const gridMin of gridChoices) {
    expect(60 % gridMin).toBe(0)
    expect(() => checkGrid(gridMin)).not.toThrow()
  }
  for (const gridMin of [0, -15, 7, 45, 61, 14.5, Number.NaN])
    expect(() => checkGrid(gridMin)).toThrow(expect.objectContaining({ field: 'gridMin' }))
})

test('worse paint never takes less time', () => {
  expect(() => checkConditionFactors(usualConditionFactors)).not.toThrow()
  for (const [factors, field] of [
    [{ good: 0.4, worn: 1, heavy: 1 }, 'conditionFactors.good'],
    [{ good: 1, worn: 0.9, heavy: 2 }, 'conditionFactors.worn'],
    [{ good: 1, worn: 2, heavy: 1.9 }, 'conditionFactors.heavy'],
    [{ good: 1, worn: 2, heavy: 5.1 }, 'conditionFactors.heavy'],
    [{ good: 1, worn: Number.NaN, heavy: 2 }, 'conditionFactors.worn'],
  ] as const)
    expect(() => checkConditionFactors(factors)).toThrow(expect.objectContaining({ field }))
})

test('a bay has a name and a use, a crew member a name, a skill and hours', () => {
  expect(checkBay({ name: ' Bay 1', capabilities: ['wet'] })).toBe('Bay 1')
  expect(() => checkBay({ name: 'Bay', capabilities: [] }, 'bays.3.')).toThrow(
    expect.objectContaining({ field: 'bays.3.capabilities' }),
  )
  expect(checkCrewMember({ name: 'Jo ', skills: ['coat'], weekly: null })).toBe('Jo')
  expect(() => checkCrewMember({ name: 'Jo', skills: [], weekly: null }, 'crew.0.')).toThrow(
    expect.objectContaining({ field: 'crew.0.skills' }),
  )
  expect(() => checkCrewMember({ name: 'Jo', skills: ['coat'], weekly: [] })).toThrow(
    expect.objectContaining({ code: 'never-there', field: 'weekly' }),
  )
})
