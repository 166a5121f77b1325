import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readWall, wallText } from '../../../app/parts/wallText.ts'

test.each([
  ['8', 480],
  ['08:00', 480],
  ['0830', 510],
  ['8.30', 510],
  ['8 30', 510],
  ['17:45', 1065],
  ['5 pm', 1020],
  ['5:15 p.m.', 1035],
  ['12 am', 0],
  ['12 pm', 720],
  ['12:30am', 30],
  ['0', 0],
  ['24:00', 1440],
])('%s is %i minutes after midnight', (text, minutes) => {
  expect(readWall(text)).toBe(minutes)
})

test.each(['', 'noon', '25', '24:01', '8:60', '13 pm', '0 am', '-1', '8:3', '123456'])('%s is none', text => {
  expect(readWall(text)).toBeNull()
})

test('what is shown is read back as the same time', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1440 }), minute => {
      expect(readWall(wallText(minute))).toBe(minute)
    }),
  )
})
