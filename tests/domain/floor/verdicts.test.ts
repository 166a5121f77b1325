import { expect, test } from 'vitest'
import {
  type Booked,
  type FloorJob,
  judge,
  type Named,
  projectFloor,
  standingWords,
} from '../../../main/domain/floor/index.ts'
import { jobOf, work } from './sampleJob.ts'

type Told = Booked & Named

const open = [0, 1440, 2880].map(from => ({ from, to: from + 600 }))
const floor = (jobs: FloorJob[], said: Partial<Told> = {}): Told =>
  projectFloor({
    zone: 'UTC',
    nowAt: 0,
    gridMin: 15,
    gridFrom: 0,
    toAt: 4320,
    open,
    bays: [
      { id: 'one', name: 'Bay 1', capabilities: [], offers: [], closures: [], archived: false },
      { id: 'two', name: 'Bay 2', capabilities: [], offers: [], closures: [], archived: false },
    ],
    crew: [
      { id: 'ada', name: 'Ada', skills: [], present: open, archived: false },
      { id: 'ben', name: 'Ben', skills: [], present: open, archived: false },
    ],
    jobs,
    bayNames: new Map([['one', 'Bay 1']]),
    crewNames: new Map([
      ['ada', 'Ada'],
      ['ben', 'Ben'],
    ]),
    jobNames: new Map(jobs.map(job => [job.id, `job ${job.number}`])),
    ...said,
  })
const booked = { status: 'booked', arrivedAt: null } as const
const standings = (told: Told) => told.jobs.map(job => judge(told).of(job).standing)

test('Of two cars that want one bay the one that stands there has it, and the other’s promise is not kept', () => {
  const here = jobOf([work(0, 0, { actualStartAt: 0, endAt: 180 })], 180, { id: 'here', number: 2 })
  const due = jobOf([work(0, 120)], 180, { id: 'due', number: 1, ...booked })
  const told = floor([here, due], { nowAt: 110 })
  expect(standings(told)).toEqual(['kept', 'lacking'])
  expect(judge(told).of(due)).toMatchObject({ lack: 'its bay is taken', lateMin: 0 })
  // Both are told of it.
  expect(judge(told).conflicts.map(({ jobId, uncovered }) => [jobId, uncovered])).toEqual([
    ['here', false],
    ['due', true],
  ])
})

test('Of two cars that want one person the one begun first has them', () => {
  const late = jobOf([work(0, 0, { actualStartAt: 0, endAt: 90, crewIds: ['ada'] })], 90, { id: 'late' })
  const due = jobOf([work(0, 60, { crewIds: ['ada'], bayId: 'two' })], 120, {
    id: 'due',
    number: 2,
    ...booked,
  })
  const told = floor([late, due], { nowAt: 50 })
  expect(standings(told)).toEqual(['kept', 'lacking'])
  expect(judge(told).of(due).lack).toBe('somebody is with another car')
})

test('Who left at 10:30 is missing from the step at 14:15, and from the one under way however long it runs', () => {
  const left = { id: 'ada', name: 'Ada', skills: [], present: [{ from: 0, to: 150 }], archived: false }
  const job = jobOf(
    [work(0, 60, { crewIds: ['ben'], bayId: 'two' }), work(1, 375, { crewIds: ['ada'], bayId: 'two' })],
    435,
    booked,
  )
  expect(judge(floor([job], { crew: [left] })).of(job)).toMatchObject({
    standing: 'lacking',
    lack: 'somebody is missing',
    lackWords: ['Ada is away 06:15 to 07:15 and missing from "Step 1".'],
  })
  const running = jobOf([work(0, 60, { crewIds: ['ada'], actualStartAt: 60 })], 120, { promisedAt: 600 })
  expect(standings(floor([running], { crew: [left], nowAt: 200 }))).toEqual(['lacking'])
  expect(standings(floor([running], { nowAt: 200 }))).toEqual(['kept'])
})

test('What cannot be finished at all as things stand is never told as kept', () => {
  const gone = { id: 'ada', name: 'Ada', skills: [], present: [], archived: false }
  const job = jobOf([work(0, 60, { crewIds: ['ada'] })], 120)
  const told = floor([job], { crew: [gone] })
  expect(standings(told)).toEqual(['lacking'])
  // Once she is back the times are worked out anew.
  expect(judge(floor(told.jobs as FloorJob[])).of(job)).toMatchObject({ standing: 'kept', lack: null })
})

test('Work that fits in no opening is told as never finished', () => {
  const job = jobOf([work(0, 60, { endAt: 760 })], 760)
  expect(judge(floor([job])).of(job)).toMatchObject({
    standing: 'lacking',
    lack: 'it cannot be finished as things stand',
  })
})

test('A car that should be here and is not is reckoned as if it came now', () => {
  const due = jobOf([work(0, 60), work(1, 120, { endAt: 300 })], 300, booked)
  expect(standings(floor([due], { nowAt: 74 }))).toEqual(['kept'])
  expect(judge(floor([due], { nowAt: 120 })).of(due)).toMatchObject({
    standing: 'late',
    expectedAt: 360,
    lateMin: 60,
  })
})

test('A place only held promises nothing; a car ready and not fetched is told as that; one gone keeps how it went', () => {
  const held = jobOf([work(0, 0)], 60, { id: 'held', status: 'held', arrivedAt: null, promisedAt: 0 })
  const ready = jobOf([work(0, 0, { actualStartAt: 0, actualEndAt: 60, bayId: 'two' })], 60, { id: 'ready' })
  expect(standings(floor([held, ready], { nowAt: 80 }))).toEqual(['none', 'unfetched'])
  const { of } = judge(floor([]))
  const gone = { ...ready, status: 'handedOver' } as const
  expect(of(gone).standing).toBe('kept')
  expect(of({ ...gone, promisedAt: 30 })).toMatchObject({ standing: 'late', lateMin: 30 })
})

test('A verdict is one line, whoever shows it', () => {
  const when = (at: number) => `minute ${at}`
  const standing = { standing: 'kept', lateMin: 0, lack: null, unfetchedAt: null, promisedAt: 60 } as const
  expect(standingWords(standing, when)).toBe('✓ on time for minute 60')
  const late = { ...standing, standing: 'late', lateMin: 90, lack: 'its bay is closed' } as const
  expect(standingWords(late, when)).toBe('⚑ running late, 1 h 30 min; its bay is closed')
  expect(standingWords({ ...late, standing: 'lacking', lateMin: 0 }, when)).toBe('⚑ its bay is closed')
  expect(standingWords({ ...standing, standing: 'unfetched', unfetchedAt: 61 }, when)).toBe(
    '⚑ ready since minute 61, not fetched',
  )
})
