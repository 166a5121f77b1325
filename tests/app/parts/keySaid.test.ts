import { describe, expect, test } from 'vitest'
import { keySaid } from '../../../app/parts/keySaid.ts'
import { turnKeys } from '../../../app/parts/turnKeys.ts'
import { layouts, strokesOf } from '../../e2e/layouts.ts'

const none = { shiftKey: false, ctrlKey: false, metaKey: false, altKey: false }

/** What the app takes for pressed at each way that keyboard has to write it. */
const heard = (layout: (typeof layouts)[number], named: string) =>
  strokesOf(layout, named).map(({ key, code, shift }) => keySaid({ ...none, key, code, shiftKey: shift }))

describe.each(layouts)('on a %s keyboard', layout => {
  // Every letter, digit and sign that a screen names: those of the board, the days, the evening, G with another, ? and Z.
  test.each([...'abcdefghijklmnopqrstuvwxyz1372480569?/'])('%s is heard as itself', named => {
    const answers = heard(layout, named)
    expect(new Set(answers)).toEqual(new Set([named]))
  })
})

test('a capital is its letter, with Shift or with Caps Lock', () => {
  expect(keySaid({ ...none, key: 'E', code: 'KeyE' })).toBe('e')
  expect(keySaid({ ...none, key: 'E', code: 'KeyE', shiftKey: true })).toBe('e')
})

test('what the row of digits writes with Shift is no digit: ! on a US keyboard, / on a German one', () => {
  expect(keySaid({ ...none, key: '!', code: 'Digit1', shiftKey: true })).toBe('!')
  expect(keySaid({ ...none, key: '/', code: 'Digit7', shiftKey: true })).toBe('/')
})

test('a digit of the number pad, and keys with names, as they are', () => {
  expect(keySaid({ ...none, key: '7', code: 'Numpad7' })).toBe('7')
  expect(keySaid({ ...none, key: 'ArrowLeft', code: 'ArrowLeft', shiftKey: true })).toBe('ArrowLeft')
  expect(keySaid({ ...none, key: ' ', code: 'Space' })).toBe(' ')
})

test.each(['ctrlKey', 'metaKey', 'altKey'])('with %s it asks for something else', held => {
  expect(keySaid({ ...none, key: 'e', code: 'KeyE', [held]: true })).toBeNull()
})

test('E and L turn the days, T comes back to today', () => {
  const done: number[] = []
  const keys = turnKeys(by => done.push(by))
  for (const key of ['e', 'l', 't']) keys[key]!()
  expect(done).toEqual([-1, 1, 0])
})
