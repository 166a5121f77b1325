import { expect, test } from 'vitest'
import type { Problem } from '../../../main/domain/schedule/index.ts'
import { fitOf, gapUse } from '../../../main/domain/waiting/fit.ts'

const day = 1440
const hours = (i: number) => ({ from: i * day + 480, to: i * day + 1080 })
/** One bay and one person, open 08:00 to 18:00; a wash of two hours is asked for. */
const problem: Problem = {
  grid: 15,
  horizon: 5 * day,
  open: [0, 1, 2, 3, 4].map(hours),
  bays: [{ id: 'B', can: ['wet'], closed: [] }],
  crew: [{ id: 'P', skills: ['wash'], away: [] }],
  fixed: [{ bay: 'B', from: 480, to: 1080 }],
  newJob: {
    id: 'new',
    release: 0,
    asked: 0,
    steps: [
      {
        kind: 'work',
        minutes: 120,
        needs: 'wet',
        sameBay: false,
        waitMin: null,
        waitMax: null,
        skill: 'wash',
        crew: 1,
        split: false,
        help: null,
      },
    ],
  },
}
const wholeDay = (i: number) => ({ from: i * day, to: (i + 1) * day })
const place = (comes: { from: number; to: number }[], homeBefore = 5 * day) =>
  fitOf(problem, { comes, homeBefore })

test('the car comes on the first day that suits and has a place', () => {
  expect(place([wholeDay(0), wholeDay(2)])).toMatchObject({ feasible: true, dropOff: 2 * day + 480 })
  expect(place([wholeDay(1)])).toMatchObject({ feasible: true, dropOff: day + 480, handover: day + 600 })
  expect(place([wholeDay(0)])).toMatchObject({ feasible: false })
  expect(place([])).toMatchObject({ feasible: false })
})

test('it comes within its stretch: neither as that ends nor before it begins', () => {
  expect(place([{ from: day + 600, to: day + 601 }])).toMatchObject({ feasible: true, dropOff: day + 600 })
  expect(place([{ from: day + 601, to: day + 615 }])).toMatchObject({ feasible: false })
})

test('and is home before what was said', () => {
  expect(place([wholeDay(1)], day + 601)).toMatchObject({ feasible: true })
  expect(place([wholeDay(1)], day + 599)).toMatchObject({ feasible: false })
})

test('of the freed stretches only opening minutes count, each in its own bay', () => {
  const gaps = [
    { bay: 'B', from: 0, to: 600 },
    { bay: 'C', from: 900, to: 2_000 },
  ]
  const stays = [
    { bay: 'B', from: 540, to: 700 },
    { bay: 'C', from: 0, to: 960 },
  ]
  // B was freed for 08:00 to 10:00, C for 15:00 to 18:00 and 08:00 to 09:20 of the next day.
  expect(gapUse(gaps, stays, problem.open)).toEqual({ usedMin: 60 + 60, gapMin: 120 + 180 + 80 })
})
