import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Booked, type FloorJob, projectFloor, projectJob } from '../../../main/domain/floor/index.ts'
import { jobOf, work } from './sampleJob.ts'

const day = 1440
const open = [0, 1, 2, 3, 4, 5].map(at => ({ from: at * day, to: at * day + 600 }))
const person = (id: string) => ({ id, name: id, skills: [], present: open, archived: false })
const floor = (jobs: FloorJob[], nowAt = 0): Booked => ({
  nowAt,
  gridMin: 15,
  gridFrom: 0,
  toAt: 6 * day,
  open,
  bays: [],
  crew: [person('ada'), person('ben')],
  jobs,
})
const ada = { crewIds: ['ada'] }
const times = (job: FloorJob | undefined) => job?.steps.map(({ startAt, endAt }) => [startAt, endAt])

test('A car that is late waits for its person where another has them first, and its promise tells it', () => {
  // Both were to be washed by ben first; the second one's took an hour longer, and ada is with the other by then.
  const first = jobOf([work(0, 50, { ...ada, endAt: 230 })], 230, { id: 'first', number: 1 })
  const late = jobOf(
    [work(0, 0, { actualStartAt: 0, crewIds: ['ben'] }), work(1, 60, { ...ada, endAt: 120 })],
    120,
    { id: 'late', number: 2 },
  )
  const jobs = projectFloor(floor([first, late], 121)).jobs
  expect(times(jobs[0])).toEqual([[121, 301]])
  expect(times(jobs[1])).toEqual([
    [0, 121],
    [301, 361],
  ])
  expect(jobs[1]?.handoverAt).toBe(375)
  // Looked at alone, as an act on that job does, it comes to the same.
  expect(projectJob(floor([first, late], 121), late).job).toEqual(jobs[1])
})

test('Work under way keeps its people; what is only booked keeps its time and is not waited for where it comes later', () => {
  const running = jobOf([work(0, 0, { ...ada, actualStartAt: 0 })], 60, { id: 'running', number: 1 })
  const next = jobOf([work(0, 60, ada)], 120, { id: 'next', number: 2 })
  const booked = { status: 'booked', arrivedAt: null } as const
  const soon = jobOf([work(0, 105, ada)], 165, { id: 'soon', number: 3, ...booked })
  const jobs = projectFloor(floor([running, next, soon], 100)).jobs
  expect(jobs.map(times)).toEqual([[[0, 100]], [[100, 160]], [[105, 165]]])
  // Booked to begin before it, the other car has the person.
  const before = jobOf([work(0, 90, ada)], 150, { id: 'soon', number: 3, ...booked })
  expect(projectFloor(floor([running, next, before], 95)).jobs.map(times)).toEqual([
    [[0, 95]],
    [[150, 210]],
    [[90, 150]],
  ])
})

/** Cars in the shop, some of whose work has begun, each of one to three steps by somebody. */
const shop = fc.array(
  fc.array(
    fc.record({
      wait: fc.integer({ min: 0, max: 120 }),
      minutes: fc.integer({ min: 15, max: 200 }),
      who: fc.constantFrom('ada', 'ben'),
    }),
    { minLength: 1, maxLength: 3 },
  ),
  { minLength: 1, maxLength: 5 },
)

test('Whatever is late, nobody is planned for two cars at once, no step is sooner than alone, and looking again changes nothing', () => {
  fc.assert(
    fc.property(shop, fc.integer({ min: 0, max: 500 }), (cars, nowAt) => {
      const jobs = cars.map((steps, i) => {
        let at = 0
        const laid = steps.map(({ wait, minutes, who }, position) => {
          const startAt = at + wait
          at = startAt + minutes
          return work(position, startAt, { endAt: at, crewIds: [who], splittable: true })
        })
        return jobOf(laid, at, { id: `car ${i}`, number: i })
      })
      const projected = projectFloor(floor(jobs, nowAt))
      const busy = projected.jobs.flatMap(job =>
        job.steps.map(({ crewIds, startAt, endAt }) => ({ job: job.id, who: crewIds[0], startAt, endAt })),
      )
      for (const a of busy)
        for (const b of busy)
          if (a.job < b.job && a.who === b.who)
            expect(a.startAt < b.endAt && b.startAt < a.endAt, JSON.stringify([a, b])).toBe(false)
      for (const [i, job] of jobs.entries()) {
        const alone = projectFloor(floor([job], nowAt)).jobs[0]!
        alone.steps.forEach((step, k) => {
          expect(projected.jobs[i]!.steps[k]!.startAt).toBeGreaterThanOrEqual(step.startAt)
        })
      }
      expect(projectFloor(projected)).toEqual(projected)
    }),
    { numRuns: 150 },
  )
})
