import { expect, test } from 'vitest'
import { prepare } from '../../../main/domain/schedule/prepare.ts'
import { restrict, startsOf } from '../../../main/domain/schedule/starts.ts'
import type { Work } from '../../../main/domain/schedule/types.ts'
import { at, example } from './example.ts'

const prepared = prepare(example)
const work: Work = { kind: 'work', minutes: 90, skill: 'coat', crew: 1, split: false }

// By hand: open 08:00 to 18:00 on two days, so grid points 32 to 72 and 128 to 168.
test('Work that may not pause starts early enough to end before closing', () => {
  expect(startsOf(prepared, work, at(8), at(48))).toEqual([
    { from: 32, to: 66, length: 90 },
    { from: 128, to: 162, length: 90 },
  ])
})

test('Work that may pause is longer by the night where it crosses closing', () => {
  expect(startsOf(prepared, { ...work, split: true }, at(8), at(48))).toEqual([
    { from: 32, to: 66, length: 90 },
    { from: 67, to: 71, length: 90 + 14 * 60 },
    { from: 128, to: 162, length: 90 },
  ])
})

test('A free stretch just as long as the work has one start', () => {
  const away = [
    { from: at(8), to: at(9) },
    { from: at(10, 30), to: at(48) },
  ]
  const busy = prepare({ ...example, crew: [{ id: 'Jo', skills: ['coat'], away }] })
  expect(startsOf(busy, work, at(8), at(48))).toEqual([{ from: 36, to: 36, length: 90 }])
  expect(startsOf(busy, { ...work, minutes: 91 }, at(8), at(48))).toEqual([])
})

test('A hold may start at any minute that leaves it its time', () => {
  expect(startsOf(prepared, { kind: 'hold', minutes: 240 }, at(8), at(48))).toEqual([
    { from: 32, to: 176, length: 240 },
  ])
})

test('A team starts while enough of its people are free to the end', () => {
  const day = at(24)
  const crew = [
    { id: 'Jo', skills: ['coat'], away: [{ from: at(12), to: day }] },
    {
      id: 'Kim',
      skills: ['coat'],
      away: [
        { from: at(8), to: at(10) },
        { from: at(14), to: day },
      ],
    },
  ]
  const today = prepare({ ...example, crew })
  expect(startsOf(today, { ...work, minutes: 60, crew: 2 }, at(8), at(18))).toEqual([
    { from: 40, to: 44, length: 60 },
  ])
  // Jo until 11:00, Kim from 10:00 to 13:00: with one needed, the two make one run.
  expect(startsOf(today, { ...work, minutes: 60 }, at(8), at(18))).toEqual([{ from: 32, to: 52, length: 60 }])
})

test('A pin keeps its minute only', () => {
  expect(startsOf(prepared, { ...work, startFrom: at(9), startTo: at(9) }, at(8), at(48))).toEqual([
    { from: 36, to: 36, length: 90 },
  ])
})

test('Pieces are cut to the runs and take over their length', () => {
  const piece = { from: 10, to: 20, value: 5, slope: 1, length: 0 }
  const runs = [
    { from: 2, to: 4, length: 60 },
    { from: 8, to: 11, length: 60 },
    { from: 18, to: 30, length: 75 },
  ]
  expect(restrict([piece], runs)).toEqual([
    { from: 10, to: 11, value: 5, slope: 1, length: 60 },
    { from: 18, to: 20, value: 13, slope: 1, length: 75 },
  ])
})
