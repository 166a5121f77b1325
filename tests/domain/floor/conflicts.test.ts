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
