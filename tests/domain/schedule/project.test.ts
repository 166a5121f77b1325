import { describe, expect, test } from 'vitest'
import { type Actual, project } from '../../../main/domain/schedule/project.ts'
import type { Plan, Problem, Step } from '../../../main/domain/schedule/types.ts'

const steps: readonly Step[] = [
  { kind: 'work', minutes: 60, needs: 'wet', skill: 'wash', crew: 1, split: false },
  { kind: 'work', minutes: 120, needs: 'clean', skill: 'coat', crew: 1, split: false },
  { kind: 'hold', minutes: 60, needs: 'clean', sameBay: true, waitMin: 0, waitMax: 0 },
  {
    kind: 'work',
    minutes: 60,
    needs: 'clean',
    skill: 'coat',
    crew: 1,
    split: false,
    sameBay: true,
    waitMin: 0,
    waitMax: 90,
  },
  { kind: 'hold', minutes: 600, needs: 'clean', sameBay: true, waitMin: 0, waitMax: 0 },
]

/** Three days 08:00 to 18:00. */
const problem: Problem = {
  grid: 15,
  horizon: 3 * 1440,
  open: [0, 1, 2].map(day => ({ from: day * 1440 + 480, to: day * 1440 + 1080 })),
  bays: [
    { id: 'A', can: ['wet'], closed: [] },
    { id: 'B', can: ['clean'], closed: [] },
  ],
  crew: [
    { id: 'p', skills: ['wash'], away: [] },
    { id: 'q', skills: ['coat'], away: [{ from: 1020, to: 1080 }] },
  ],
  fixed: [{ bay: 'B', from: 2000, to: 2400, job: 'next' }],
  newJob: { id: 'job', release: 0, asked: 0, steps },
}

const plan: Plan = {
  steps: [
    { bay: 'A', start: 480, end: 540, crew: ['p'] },
    { bay: 'B', start: 540, end: 660, crew: ['q'] },
    { bay: 'B', start: 660, end: 720, crew: [] },
    { bay: 'B', start: 750, end: 810, crew: ['q'] },
    { bay: 'B', start: 810, end: 1410, crew: [] },
  ],
  handover: 1920,
}

const run = (actuals: Actual[], now: number, over: Problem = problem) => project(over, plan, { actuals, now })
const times = (projection: ReturnType<typeof run>) => projection.steps.map(({ start, end }) => [start, end])

describe('a job re-projected', () => {
  test('is its plan while nothing has happened and nothing is late', () => {
    const projection = run([], 400)
    expect(times(projection)).toEqual(plan.steps.map(({ start, end }) => [start, end]))
    expect(projection).toMatchObject({ handover: 1920, slip: 0, broken: [] })
    expect(projection.steps.map(({ state }) => state)).toEqual(Array(5).fill('planned'))
  })

  test('keeps planned starts after a step that ended early, but cures from the real end', () => {
    const projection = run(
      [
        { start: 480, end: 530 },
        { start: 540, end: 643 },
      ],
      645,
    )
    expect(times(projection).slice(1)).toEqual([
      [540, 643],
      [643, 703],
      [750, 810],
      [810, 1410],
    ])
    expect(projection.steps.map(({ state }) => state)).toEqual([
      'done',
      'done',
      'running',
      'planned',
      'planned',
    ])
    expect(projection.steps[2]!.shift).toBe(-17)
  })

  test('pushes what follows a step that ended late', () => {
    const projection = run(
      [
        { start: 480, end: 540 },
        { start: 545, end: 707 },
      ],
      707,
    )
    expect(times(projection).slice(2)).toEqual([
      [707, 767],
      [767, 827],
      [827, 1427],
    ])
    expect(projection).toMatchObject({ handover: 1920, slip: 0, broken: [] })
  })

  test('holds a wipe back for the morning rather than leave a night between it and its coat', () => {
    const wipe: Step = { kind: 'work', minutes: 30, needs: 'clean', skill: 'coat', crew: 1, split: false }
    const wiped = [wipe, { ...wipe, minutes: 90, waitMax: 45 }]
    const over = { ...problem, newJob: { ...problem.newJob, steps: wiped } }
    const early: Plan = {
      steps: [
        { bay: 'B', start: 900, end: 930, crew: ['q'] },
        { bay: 'B', start: 930, end: 1020, crew: ['q'] },
      ],
      handover: 1020,
    }
    const late = project(over, early, { actuals: [], now: 920 })
    // Of the 120 minutes, 100 are left before `q` goes at 17:00: at 15:20 a wipe would be done with no coat to follow.
    expect(times(late)).toEqual([
      [1920, 1950],
      [1950, 2040],
    ])
    expect(late.broken.filter(({ code }) => code === 'waitTooLong')).toEqual([])
    // Begun, it cannot be held back: the missed wait is told.
    const begun = project(over, early, { actuals: [{ start: 920 }], now: 930 })
    expect(begun.broken).toContainEqual({ code: 'waitTooLong', step: 1, from: 950, to: 1920, minutes: 45 })
  })

  test('waits for its people, and says the recoat window is missed, and that the promise slips', () => {
    const actuals = [
      { start: 480, end: 540 },
      { start: 540, end: 930 },
    ]
    const projection = run(actuals, 930)
    // Cured at 990; the coater leaves at 1020, which is too short: the next morning, 870 min after the cure.
    expect(times(projection).slice(2)).toEqual([
      [930, 990],
      [1920, 1980],
      [1980, 2580],
    ])
    expect(projection.broken).toEqual([
      { code: 'waitTooLong', step: 3, from: 990, to: 1920, minutes: 90 },
      { code: 'bayTaken', bay: 'B', from: 2000, to: 2400, other: 'next' },
    ])
    expect(projection).toMatchObject({ handover: 3360, slip: 1440 })
  })

  test('lets an overdue step run on, and a step not begun wait for now', () => {
    const overdue = run([{ start: 480 }], 600)
    expect(times(overdue).slice(0, 2)).toEqual([
      [480, 600],
      [600, 720],
    ])
    expect(overdue.steps[0]!.state).toBe('running')
    expect(run([], 500).steps[0]).toMatchObject({ start: 500, end: 560, state: 'planned', shift: 20 })
  })

  test('pauses a split step at closing and goes on the next morning', () => {
    const split = steps.map((step, i) => (i === 1 ? ({ ...step, split: true } as Step) : step))
    const crew = [problem.crew[0]!, { id: 'q', skills: ['coat'], away: [] }]
    const later = { ...problem, crew, newJob: { ...problem.newJob, steps: split } }
    expect(run([{ start: 980, end: 1040 }], 1040, later).steps[1]).toMatchObject({ start: 1040, end: 2000 })
  })

  test('moves a car to another bay only while the doors are open', () => {
    const hold: Step = { kind: 'hold', minutes: 60, needs: 'clean' }
    const two = { ...problem, newJob: { ...problem.newJob, steps: [steps[0]!, hold] }, fixed: [] }
    const short: Plan = {
      steps: [plan.steps[0]!, { bay: 'B', start: 540, end: 600, crew: [] }],
      handover: 600,
    }
    const projection = project(two, short, { actuals: [{ start: 1050, end: 1110 }], now: 1110 })
    expect(projection.steps[1]).toMatchObject({ start: 1920, end: 1980 })
    expect(projection.handover).toBe(1980)
  })

  test('pushes a move inside a hold until the car may be touched, or leaves it out where the hold ends first', () => {
    const hold: Step = { kind: 'hold', minutes: 120, needs: null, sameBay: true, waitMax: 0, moveAfter: 30 }
    const two = { ...problem, newJob: { ...problem.newJob, steps: [steps[0]!, hold] }, fixed: [] }
    const moved = { at: 570, bay: 'B' }
    const short: Plan = {
      steps: [plan.steps[0]!, { bay: 'A', start: 540, end: 660, crew: [], moved }],
      handover: 660,
    }
    expect(project(two, short, { actuals: [{ start: 480, end: 560 }], now: 560 }).steps[1]!.moved).toEqual({
      at: 590,
      bay: 'B',
    })
    expect(
      project(two, short, { actuals: [{ start: 990, end: 1070 }], now: 1070 }).steps[1]!.moved,
    ).toBeUndefined()
  })

  test('says when the horizon does not hold what is left', () => {
    const projection = run([{ start: 3900, end: 3950 }], 3950)
    expect(projection).toMatchObject({ handover: null, slip: null })
    expect(projection.broken.at(-1)).toMatchObject({ code: 'beyondHorizon', limit: 4320 })
  })
})
