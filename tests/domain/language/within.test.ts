import { afterEach, expect, test } from 'vitest'
import { speakAs } from '../../../main/domain/language/languages.ts'
import { withinSentence } from '../../../main/domain/language/within.ts'

const before = speakAs(() => 'en')
afterEach(() => {
  speakAs(before)
})

test('a label among other words loses its capital in English and keeps it in German', () => {
  speakAs(() => 'en')
  expect(withinSentence('Matte Film')).toBe('matte film')
  speakAs(() => 'de')
  expect(withinSentence('Matte Folie')).toBe('Matte Folie')
})
