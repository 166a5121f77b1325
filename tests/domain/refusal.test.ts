import { expect, test } from 'vitest'
import { found, Refusal, refuse, withField } from '../../main/domain/refusal.ts'

test('A refusal names its field, its value and the remedy', () => {
  const year = 1700
  expect(() => refuse('year-bad', { year }, 'Use 1886 or later.')).toThrow(
    expect.objectContaining({ code: 'year-bad', field: 'year', value: 1700, message: 'Use 1886 or later.' }),
  )
})

test('What was looked up is given back, or missing', () => {
  expect(found(0, { id: 'a' }, 'Gone.')).toBe(0)
  for (const nothing of [null, undefined])
    expect(() => found(nothing, { id: 'a' }, 'Gone.')).toThrow(
      expect.objectContaining({ code: 'missing', field: 'id', value: 'a' }),
    )
})

test('The field is renamed for the caller, and other errors are left as they are', () => {
  const refusal = new Refusal('bad', 'minutes', 0, 'More.')
  expect(withField(refusal, field => `steps.2.${field}`)).toMatchObject({
    code: 'bad',
    field: 'steps.2.minutes',
    value: 0,
  })
  const other = new Error('broken')
  expect(withField(other, () => 'x')).toBe(other)
})
