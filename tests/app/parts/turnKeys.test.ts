import { getHotkeyHandler } from '@mantine/hooks'
import { expect, test } from 'vitest'
import { digitHotkeys, turnHotkeys } from '../../../app/parts/turnKeys.ts'

/** What a key does whose sign is `key` and which lies at `code` of a US keyboard. */
function pressed(key: string, code: string, shiftKey = false): unknown[] {
  const done: unknown[] = []
  const keys = [
    ...turnHotkeys(by => done.push(by)),
    ...digitHotkeys(['1', '3', '7'], digit => done.push(digit)),
  ]
  const event = { key, code, shiftKey, altKey: false, ctrlKey: false, metaKey: false, preventDefault() {} }
  getHotkeyHandler(keys)(event as unknown as KeyboardEvent)
  return [...new Set(done)]
}

test.each([
  ['e', 'KeyE', -1],
  ['l', 'KeyL', 1],
  ['t', 'KeyT', 0],
  ['1', 'Digit1', '1'],
  // A French keyboard writes & where 1 lies, and " where 3 does.
  ['&', 'Digit1', '1'],
  ['"', 'Digit3', '3'],
  ['7', 'Numpad7', '7'],
])('%s at %s', (key, code, does) => {
  expect(pressed(key, code)).toEqual([does])
})

test('nothing else, and not with Shift', () => {
  expect(pressed('[', 'BracketLeft')).toEqual([])
  expect(pressed('2', 'Digit2')).toEqual([])
  expect(pressed('E', 'KeyE', true)).toEqual([])
})
