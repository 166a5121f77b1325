import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { durationText, readDuration } from '../../../app/parts/durationText.ts'

describe('a duration as it is typed', () => {
  test.each([
    ['90', 90],
    ['90 min', 90],
    ['90m', 90],
    ['1 h 30', 90],
    ['1h30', 90],
    ['1h30m', 90],
    ['1 hour 30 minutes', 90],
    ['1:30', 90],
    ['1.5 h', 90],
    ['1,5 h', 90],
    [' 2 H ', 120],
    ['0', 0],
    ['7 d', 10_080],
    ['2 d 4 h', 3_120],
    ['1 week', 10_080],
    ['1 w 1 d', 11_520],
    ['0.1 h', 6],
  ])('%s is %i minutes', (text, minutes) => {
    expect(readDuration(text)).toBe(minutes)
  })

  test.each([
    '',
    ' ',
    '-30',
    'soon',
    '1 h 30 h',
    '30 min 1 h',
    '1:75',
    '1.5',
    '1 x',
    'h',
    '1 h 30 5',
    '1..5 h',
  ])('%s is none', text => {
    expect(readDuration(text)).toBeNull()
  })

  test('what is shown is read back as the same minutes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 525_600 }), minutes => {
        expect(readDuration(durationText(minutes))).toBe(minutes)
      }),
    )
  })

  test.each([
    [0, '0 min'],
    [45, '45 min'],
    [60, '1 h'],
    [90, '1 h 30'],
    [65, '1 h 05'],
    [720, '12 h'],
    [1440, '1 d'],
    [1500, '25 h'],
    [2880, '2 d'],
    [10_080, '7 d'],
    [2885, '2 d 0 h 05'],
  ])('%i minutes are shown as %s', (minutes, text) => {
    expect(durationText(minutes)).toBe(text)
  })
})

test('more minutes than the api takes are no duration', () => {
  expect(readDuration('694 d')).toBe(999_360)
  expect(readDuration('695 d')).toBeNull()
})
