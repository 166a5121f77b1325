import { expect, test } from 'vitest'
import { type Booked, problemOf, projectFloor, projectJob } from '../../../main/domain/floor/index.ts'
import { jobOf, work } from './sampleJob.ts'

const bay = (id: string, archived = false) => ({
  id,
  name: id,
  capabilities: ['wet', 'polish'] as const,
  offers: ['extraction'],
  closures: [{ fromAt: 900, toAt: 960, reason: 'lift' }],
  archived,
})
const person = (id: string, archived = false) => ({
  id,
  name: id,
  skills: ['wash'] as const,
  present: [{ from: 0, to: 480 }],
  archived,
})
/** Open from 0 to 600 and from 1440 to 2040; Ada leaves at 480. */
const floor = (said: Partial<Booked> = {}): Booked => ({
  nowAt: 0,
  gridMin: 15,
  gridFrom: 0,
  toAt: 4320,
  open: [
    { from: 0, to: 600 },
    { from: 1440, to: 2040 },
  ],
  bays: [bay('one'), bay('old', true)],
  crew: [person('ada'), person('gone', true)],
  jobs: [],
  ...said,
})
const fresh = { id: 'new', release: 0, asked: 0, steps: [] }

test('What is archived is not planned with; closures and absences are kept clear of', () => {
  const found = problemOf(floor(), { job: fresh })
  expect(found.bays).toEqual([
    { id: 'one', can: ['wet', 'polish', 'extraction'], closed: [{ from: 900, to: 960 }] },
  ])
  expect(found.crew).toEqual([
    {
      id: 'ada',
      skills: ['wash'],
      away: [
        { from: 480, to: 600 },
        { from: 1440, to: 2040 },
      ],
    },
  ])
})

test('Everything booked is fixed and its people are busy; the job itself stands in nobody’s way', () => {
  const booked = jobOf([work(0, 60, { crewIds: ['ada'] })], 120)
  const busy = problemOf(floor({ jobs: [booked] }), { job: fresh })
  expect(busy.fixed).toEqual([{ bay: 'one', from: 60, to: 120, job: 'job' }])
  expect(busy.crew[0]?.away[0]).toEqual({ from: 60, to: 120 })
  const own = problemOf(floor({ jobs: [booked] }), { job: fresh, exceptJobId: 'job' })
  expect(own.fixed).toEqual([])
  expect(own.crew[0]?.away[0]).toEqual({ from: 480, to: 600 })
})

test('Work that is finished, or over, keeps nobody', () => {
  const done = jobOf(
    [work(0, 60, { crewIds: ['ada'], actualStartAt: 60, actualEndAt: 90 }), work(1, 120)],
    180,
  )
  expect(problemOf(floor({ jobs: [done] }), { job: fresh }).crew[0]?.away[0]?.from).toBe(480)
  const over = jobOf([work(0, 60, { crewIds: ['ada'] })], 180)
  expect(problemOf(floor({ nowAt: 120, jobs: [over] }), { job: fresh }).crew[0]?.away[0]?.from).toBe(480)
})

test('A step that overruns pushes what follows it, and its handover', () => {
  const late = jobOf([work(0, 0, { actualStartAt: 0 }), work(1, 60)], 120)
  const { job, broken } = projectJob(floor({ nowAt: 90, jobs: [late] }), late)
  expect(broken).toEqual([])
  expect(job.steps.map(({ startAt, endAt }) => [startAt, endAt])).toEqual([
    [0, 90],
    [90, 150],
  ])
  expect([job.handoverAt, job.leavesAt]).toEqual([150, 150])
})

test('A car nobody has come for holds its bay until it can be fetched next', () => {
  const done = jobOf([work(0, 0, { actualStartAt: 0, actualEndAt: 60 })], 60)
  const at = (nowAt: number) => projectFloor(floor({ nowAt, jobs: [done] })).jobs[0]?.leavesAt
  expect(at(92)).toBe(105)
  expect(at(700)).toBe(1440)
})

test('A car that is only booked stays where the plan put it', () => {
  const booked = jobOf([work(0, 0)], 60, { status: 'booked', arrivedAt: null })
  expect(projectFloor(floor({ nowAt: 30, jobs: [booked] })).jobs).toEqual([booked])
})

test('A step that asks for several things of its bay finds one that has them all', () => {
  const step = { kind: 'hold', minutes: 60 } as const
  const can = (needs: string) =>
    problemOf(floor(), { job: { ...fresh, steps: [{ ...step, needs }] } }).bays[0]?.can ?? []
  expect(can('extraction + polish')).toContain('extraction + polish')
  expect(can('lift + polish')).not.toContain('lift + polish')
})

test('Somebody from outside is counted on only after their notice, or on a day they come anyway', () => {
  const always = [
    { from: 0, to: 600 },
    { from: 1440, to: 2040 },
    { from: 2880, to: 3480 },
  ]
  const outside = { ...person('ada'), present: always, noticeDays: 2 }
  const days = { open: always, crew: [outside] }
  expect(problemOf(floor(days), { job: fresh }).crew[0]?.away).toEqual([{ from: 0, to: 2880 }])
  const booked = jobOf([work(0, 1500, { crewIds: ['ada'] })], 1560)
  expect(problemOf(floor({ ...days, jobs: [booked] }), { job: fresh }).crew[0]?.away).toEqual([
    { from: 0, to: 1440 },
    { from: 1500, to: 1560 },
  ])
  expect(
    problemOf(floor({ ...days, crew: [{ ...outside, noticeDays: 0 }] }), { job: fresh }).crew[0]?.away,
  ).toEqual([])
})
