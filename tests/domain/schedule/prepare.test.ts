import { expect, test } from 'vitest'
import { gridCeil, gridFloor, minuteAt, prepare } from '../../../main/domain/schedule/prepare.ts'
import { at, example } from './example.ts'

// By hand from the worked example in main/domain/schedule/README.md; grid points are quarters of an hour from midnight.
test('Bookings leave free spans, and openings doors in grid points', () => {
  const { doors, bays, crew, hours } = prepare(example)
  expect(doors).toEqual([
    { from: 32, to: 72 },
    { from: 128, to: 168 },
  ])
  expect(bays.map(({ id, free }) => [id, free])).toEqual([
    ['wash', [{ from: at(8), to: at(48) }]],
    [
      'clean',
      [
        { from: at(11), to: at(16) },
        { from: at(18), to: at(48) },
      ],
    ],
  ])
  expect(crew[0]?.free).toEqual(example.open)
  expect(hours.total).toBe(1200)
})

test('A person is free in opening minutes without an absence', () => {
  const away = [{ from: at(7), to: at(9) }]
  const { crew } = prepare({ ...example, crew: [{ id: 'Jo', skills: [], away }] })
  expect(crew[0]?.free[0]).toEqual({ from: at(9), to: at(18) })
})

test('The grid counts from where it is anchored', () => {
  const grid = { grid: 15, gridFrom: 5 }
  expect([gridCeil(grid, 6), gridFloor(grid, 34), minuteAt(grid, 2)]).toEqual([1, 1, 35])
})
