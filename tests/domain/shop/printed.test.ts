import { expect, it } from 'vitest'
import { fontFor, openFont, readyFonts } from '../../../main/documents/kit/fonts.ts'
import { unprintedIn } from '../../../main/domain/shop/index.ts'

// Invented or everyday names of each script.
const printed = [
  'Łucja Birk-Ødegård',
  'Αλέξης',
  'Щёлкин',
  'משה כהן',
  'محمد الطويل',
  '王小明',
  '山田たろう',
  '김민준',
]
const boxes = ['สมชาย', 'राम', 'தமிழ்']

it('names the letters of the scripts no font comes along for, and no others', () => {
  for (const name of printed) expect(unprintedIn(`${name} (VIP), 12 €`)).toBe('')
  for (const name of boxes) expect(unprintedIn(name)).not.toBe('')
  expect(unprintedIn('Ana กก')).toBe('ก')
})

it('agrees with what the fonts carry', async () => {
  await readyFonts()
  const writes = (letter: string) => {
    const codePoint = letter.codePointAt(0)!
    return openFont(fontFor(codePoint, 'regular')).hasGlyphForCodePoint(codePoint)
  }
  for (const letter of printed.join('').replaceAll(' ', '')) expect(writes(letter), letter).toBe(true)
  for (const name of boxes) for (const letter of unprintedIn(name)) expect(writes(letter), letter).toBe(false)
})
