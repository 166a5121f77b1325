import fc from 'fast-check'
import { expect, test } from 'vitest'
import { checkNote, checkText, checkUnique } from '../../../main/domain/shop/index.ts'

test('text is kept trimmed, with single spaces, and keeping it again changes nothing', () => {
  expect(checkText('  Bay \t 1\n', 'name', 'A name')).toBe('Bay 1')
  fc.assert(
    fc.property(
      fc.string({ minLength: 1, maxLength: 100 }).filter(text => text.trim() !== ''),
      text => {
        const kept = checkText(text, 'name', 'A name')
        expect(checkText(kept, 'name', 'A name')).toBe(kept)
        expect(kept).toBe(kept.trim())
      },
    ),
  )
})

test('no text, or more than fits, is refused with the field and what to do', () => {
  expect(() => checkText(' \n ', 'crew.1.name', 'The name')).toThrow(
    expect.objectContaining({ code: 'text-missing', field: 'crew.1.name' }),
  )
  expect(() => checkText('x'.repeat(41), 'name', 'The name', 40)).toThrow(
    expect.objectContaining({ code: 'text-long', message: expect.stringContaining('40 or fewer') }),
  )
  expect(checkText('x'.repeat(40), 'name', 'The name', 40)).toHaveLength(40)
})

test('a note may be empty and keeps its lines', () => {
  expect(checkNote('  ', 'note')).toBe('')
  expect(checkNote(' a\nb ', 'note')).toBe('a\nb')
  expect(() => checkNote('x'.repeat(2_001), 'note')).toThrow(expect.objectContaining({ field: 'note' }))
})

test('of two equal names the later is refused, capitals aside', () => {
  const check = (names: string[]) => checkUnique(names, i => `bays.${i}.name`, 'a bay')
  expect(() => check(['Bay 1', 'Bay 2', 'BAY 1'])).toThrow(expect.objectContaining({ field: 'bays.2.name' }))
  expect(() => check(['Bay 1', 'Bay 2'])).not.toThrow()
})
