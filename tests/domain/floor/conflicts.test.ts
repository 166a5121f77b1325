import { expect, test } from 'vitest'
import { conflictsOn } from '../../../main/domain/floor/index.ts'
import type { Floor } from '../../../main/services/floor/floor.ts'

const job = (id: string, from: number, to: number) => ({
  id,
  handoverAt: to,
  leavesAt: to,
  steps: [
    {
      name: 'Wash',
      bayId: 'bay',
      startAt: from,
      endAt: to,
      actualEndAt: null,
      movedToBayId: null,
      movedAt: null,
      crewIds: [],
    },
  ],
})

/** As much of a floor as conflicts are found in: two cars in one bay, the second from minute 600 on. */
const floor = (firstLeavesAt: number, nowAt = 0) =>
  ({
    zone: 'UTC',
    nowAt,
    gridMin: 15,
    open: [{ from: 0, to: 1440 }],
    bays: [{ id: 'bay', name: 'Bay 1', closures: [] }],
    crew: [],
    jobs: [job('a', 540, firstLeavesAt), job('b', 600, 660)],
    jobNames: new Map([
      ['a', 'KFR 204 (job 1)'],
      ['b', 'LOW 771 (job 2)'],
    ]),
  }) as object as Floor

test('A car that overstays by less than a grid step is no conflict; by a whole one it is, told to both', () => {
  expect(conflictsOn(floor(614))).toEqual([])
  expect(conflictsOn(floor(615)).map(({ jobId, fromAt, toAt }) => [jobId, fromAt, toAt])).toEqual([
    ['a', 600, 615],
    ['b', 600, 615],
  ])
  // Of what is over only the rest counts.
  expect(conflictsOn(floor(620, 606))).toEqual([])
})

/** One car washed from 600 to 660 by somebody who is there in the given minutes. */
const washedBy = (present: { from: number; to: number }[], change: object = {}, nowAt = 0) => {
  const [one] = floor(660, nowAt).jobs.slice(1)
  const steps = [{ ...one!.steps[0]!, position: 0, crewIds: ['jo'], actualStartAt: null, ...change }]
  return {
    ...floor(600, nowAt),
    jobs: [{ ...one, steps }],
    crew: [{ id: 'jo', name: 'Jo', skills: ['wash'], present, archived: false }],
  } as object as Floor
}
const missing = (of: Floor) =>
  conflictsOn(of).map(({ kind, crewId, fromAt, toAt }) => [kind, crewId, fromAt, toAt])

test('Somebody who misses less than a grid step of the work is no conflict; a whole one is told', () => {
  expect(missing(washedBy([{ from: 0, to: 1440 }]))).toEqual([])
  expect(missing(washedBy([{ from: 614, to: 1440 }]))).toEqual([])
  expect(missing(washedBy([{ from: 615, to: 1440 }]))).toEqual([['away', 'jo', 600, 615]])
  // Two absences within the work are as long as they are together.
  const twice = [
    { from: 0, to: 610 },
    { from: 618, to: 630 },
    { from: 637, to: 1440 },
  ]
  expect(missing(washedBy(twice))).toEqual([['away', 'jo', 610, 637]])
})

test('What is over is nobody’s absence, and work under way wants its person until it is finished', () => {
  expect(missing(washedBy([{ from: 640, to: 1440 }], {}, 630))).toEqual([])
  const begun = { actualStartAt: 600 }
  expect(missing(washedBy([{ from: 0, to: 660 }], begun, 700))).toEqual([['away', 'jo', 700, 715]])
})

test('Somebody who has left the crew is away all the time', () => {
  const of = washedBy([{ from: 0, to: 1440 }])
  const left = { ...of, crew: of.crew.map(person => ({ ...person, archived: true })) }
  expect(missing(left)).toEqual([['away', 'jo', 600, 660]])
})
