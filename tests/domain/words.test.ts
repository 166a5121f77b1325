import { expect, test } from 'vitest'
import { listWords, orWords, sentence } from '../../main/domain/words.ts'

test('words become a sentence once: a capital at the front, one mark at the end', () => {
  expect(sentence('its bay is closed')).toBe('Its bay is closed.')
  for (const whole of ['Its bay is closed.', 'Leave?', 'Stop!']) expect(sentence(whole)).toBe(whole)
})

test('a list has commas between, and a word before its last', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(listWords)).toEqual(['', 'a', 'a and b', 'a, b and c'])
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(orWords)).toEqual(['', 'a', 'a or b', 'a, b or c'])
})
