import { expect, test } from 'vitest'
import { readWord } from '../../../main/domain/imports/words.ts'

const finishes = ['gloss', 'satin', 'matte film'] as const

test('a word is found whatever its capitals, accents and signs', () => {
  expect(readWord(' GLÖSS ', finishes)).toBe('gloss')
  expect(readWord('Matte-Film', finishes)).toBe('matte film')
  expect(readWord('matte', finishes)).toBeNull()
  expect(readWord('', finishes)).toBeNull()
})

test('by how the screens show it too, and by another way to write it', () => {
  const shown = (word: string) => ({ gloss: 'Glanz', satin: 'Seidenmatt' })[word] ?? word
  expect(readWord('seidenmatt', finishes, {}, shown)).toBe('satin')
  expect(readWord('satin', finishes, {}, shown)).toBe('satin')
  expect(readWord('Shiny!', finishes, { shiny: 'gloss' })).toBe('gloss')
})
