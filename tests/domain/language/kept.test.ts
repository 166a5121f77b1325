import { expect, test } from 'vitest'
import { sayKept } from '../../../main/domain/language/index.ts'
import { speaking } from '../../../main/services/desk/speaking.ts'

test('one of the app’s own words is said, what somebody typed stands as it is', () => {
  expect(speaking('de', () => sayKept('saloon'))).toBe(speaking('de', () => sayKept('saloon')))
  expect(speaking('de', () => sayKept('saloon'))).not.toBe('saloon')
  expect(speaking('de', () => sayKept('Ovrel Two'))).toBe('Ovrel Two')
  expect(sayKept(12)).toBe('12')
})

test('signs of a message in it are only signs', () => {
  for (const typed of ["the owner's", '{plate}', 'a | b', 'half }']) expect(sayKept(typed)).toBe(typed)
})
