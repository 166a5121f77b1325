import { describe, expect, it } from 'vitest'
import { countLives, pooled, readingOf } from '../../../../main/domain/upkeep/life/reading.ts'

const look = (age: number, working: boolean) => ({ age, working })

describe('looks at one life', () => {
  it.each([
    ['none', [], null],
    ['working once', [look(100, true)], { from: 100, to: null }],
    ['working twice, the last counting', [look(200, true), look(100, true)], { from: 200, to: null }],
    ['gone at the first look', [look(150, false)], { from: 0, to: 150 }],
    ['working, then gone', [look(100, true), look(190, false)], { from: 100, to: 190 }],
    [
      'gone twice, the first counting',
      [look(250, false), look(100, true), look(190, false)],
      { from: 100, to: 190 },
    ],
    ['working and gone on one day', [look(100, false), look(100, true)], { from: 100, to: 100 }],
    ['a look on the day it was laid', [look(0, true)], null],
    ['gone on the day it was laid', [look(0, false)], null],
  ] as const)('%s', (_, looks, reading) => {
    expect(readingOf(looks)).toEqual(reading)
  })

  it('refuse one that works again after it was gone', () => {
    expect(() => readingOf([look(100, false), look(150, true)])).toThrow(
      expect.objectContaining({ code: 'working-after-gone', value: 150 }),
    )
  })
})

describe('many readings', () => {
  it('are counted together where they say the same', () => {
    const readings = [
      { from: 100, to: null },
      { from: 0, to: 90, count: 2 },
      { from: 100, to: null, count: 3 },
    ]
    expect(pooled(readings)).toEqual([
      { from: 100, to: null, count: 4 },
      { from: 0, to: 90, count: 2 },
    ])
    expect(countLives(readings)).toEqual({ lives: 6, ended: 2 })
  })
})
