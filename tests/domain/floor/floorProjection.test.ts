import { expect, test } from 'vitest'
import { type Booked, type FloorJob, projectJob } from '../../../main/domain/floor/index.ts'
import { jobOf, work } from './sampleJob.ts'

const open = [{ from: 0, to: 600 }]
const floor = (jobs: FloorJob[]): Booked => ({
  nowAt: 30,
  gridMin: 15,
  gridFrom: 0,
  toAt: 1440,
  open,
  bays: [],
  crew: [{ id: 'ada', name: 'ada', skills: [], present: open, archived: false }],
  jobs,
})
const ada = (minutes: number) => jobOf([work(0, 0, { crewIds: ['ada'], endAt: minutes })], minutes)
const times = (floorOf: FloorJob[], job: FloorJob) =>
  projectJob(floor(floorOf), job).job.steps.map(({ startAt, endAt }) => [startAt, endAt])

test('a job tried otherwise than it is stored takes the place of the stored one, whose people it does not wait for', () => {
  // Not begun at minute 30: it begins now, and takes the two hours it is tried with.
  expect(times([ada(60)], ada(120))).toEqual([[30, 150]])
})

test('a job the floor does not have yet is projected among those it has', () => {
  const other = jobOf([work(0, 0, { crewIds: ['ada'], actualStartAt: 0 })], 60, { id: 'other', number: 2 })
  // Ada is at work on the other car until minute 60.
  expect(times([other], ada(60))).toEqual([[60, 120]])
})
