import { describe, expect, test } from 'vitest'
import { Refusal } from '../../../main/domain/refusal.ts'
import { readCase } from '../../../main/domain/schedule/readCase.ts'

type Draft = Record<string, unknown>

/** A sound case as JSON, with one thing about it changed. */
function draft(change: (problem: Draft, steps: Draft[]) => void): Draft {
  const steps: Draft[] = [
    { kind: 'work', minutes: 60, needs: 'wet', skill: 'wash', crew: 1, split: false },
    { kind: 'hold', minutes: 240, needs: 'cure', sameBay: true, waitMin: 0, waitMax: 0, moveAfter: 60 },
  ]
  const problem: Draft = {
    id: 'c',
    grid: 15,
    horizon: 1440,
    open: [[480, 1080]],
    bays: [{ id: 'A', can: ['wet'], closed: [[500, 510]] }],
    crew: [{ id: 'p', skills: ['wash'], away: [] }],
    fixed: [{ bay: 'A', from: 480, to: 495 }],
    newJob: { id: 'new', release: 0, asked: 0, steps },
  }
  change(problem, steps)
  return problem
}

function refusalOf(json: unknown): Refusal {
  try {
    readCase(json)
  } catch (error) {
    if (error instanceof Refusal) return error
    throw error
  }
  throw new Error('nothing was refused')
}

test('a sound case is read, pairs turned into spans', () => {
  const problem = readCase(draft(() => {}))
  expect(problem.open).toEqual([{ from: 480, to: 1080 }])
  expect(problem.newJob.steps).toHaveLength(2)
})

test('a capability or a skill nobody has is no error', () => {
  expect(() =>
    readCase(draft((_, steps) => Object.assign(steps[0]!, { needs: 'lift', skill: 'fly' }))),
  ).not.toThrow()
})

describe('what is malformed is refused by its field', () => {
  const cases: [string, string, (problem: Draft, steps: Draft[]) => void][] = [
    ['newJob.steps.0.minutes', 'field-range', (_, steps) => Object.assign(steps[0]!, { minutes: -60 })],
    ['newJob.steps.0.minutes', 'field-type', (_, steps) => Object.assign(steps[0]!, { minutes: 1.5 })],
    ['newJob.steps.0.minutes', 'field-missing', (_, steps) => delete steps[0]!.minutes],
    ['newJob.steps.0.kind', 'field-type', (_, steps) => Object.assign(steps[0]!, { kind: 'rest' })],
    ['newJob.steps.0.skill', 'field-missing', (_, steps) => delete steps[0]!.skill],
    ['newJob.steps.0.crew', 'field-range', (_, steps) => Object.assign(steps[0]!, { crew: 0 })],
    ['newJob.steps.0.split', 'field-type', (_, steps) => Object.assign(steps[0]!, { split: 'yes' })],
    [
      'newJob.steps.1.waitMax',
      'waits-contradict',
      (_, steps) => Object.assign(steps[1]!, { waitMin: 60, waitMax: 30 }),
    ],
    ['newJob.steps.1.waitMin', 'field-range', (_, steps) => Object.assign(steps[1]!, { waitMin: -1 })],
    ['newJob.steps.1.moveAfter', 'field-range', (_, steps) => Object.assign(steps[1]!, { moveAfter: -1 })],
    ['newJob.steps.0.bays.0', 'name-unknown', (_, steps) => Object.assign(steps[0]!, { bays: ['Z'] })],
    [
      'newJob.steps.0.preferCrew.0',
      'name-unknown',
      (_, steps) => Object.assign(steps[0]!, { preferCrew: ['z'] }),
    ],
    [
      'newJob.steps.0.startTo',
      'start-off-grid',
      (_, steps) => Object.assign(steps[0]!, { startFrom: 481, startTo: 490 }),
    ],
    [
      'newJob.steps.0.startTo',
      'pins-contradict',
      (_, steps) => Object.assign(steps[0]!, { startFrom: 500, startTo: 490 }),
    ],
    ['newJob.steps', 'steps-empty', problem => Object.assign(problem.newJob as Draft, { steps: [] })],
    ['newJob', 'field-missing', problem => delete problem.newJob],
    ['newJob.id', 'field-missing', problem => delete (problem.newJob as Draft).id],
    ['grid', 'field-range', problem => Object.assign(problem, { grid: 0 })],
    ['grid', 'field-range', problem => Object.assign(problem, { grid: 61 })],
    ['horizon', 'field-type', problem => Object.assign(problem, { horizon: '1440' })],
    ['open.0', 'span-empty', problem => Object.assign(problem, { open: [[1080, 480]] })],
    ['open.0', 'field-type', problem => Object.assign(problem, { open: [[480]] })],
    [
      'open.1',
      'span-overlap',
      problem =>
        Object.assign(problem, {
          open: [
            [480, 1080],
            [900, 1200],
          ],
        }),
    ],
    [
      'bays.0.closed.1',
      'span-overlap',
      problem =>
        Object.assign(problem, {
          bays: [
            {
              id: 'A',
              can: [],
              closed: [
                [0, 9],
                [5, 8],
              ],
            },
          ],
        }),
    ],
    [
      'bays.1.id',
      'name-twice',
      problem =>
        Object.assign(problem, {
          bays: [
            { id: 'A', can: [] },
            { id: 'A', can: [] },
          ],
        }),
    ],
    ['bays.0.can', 'field-missing', problem => Object.assign(problem, { bays: [{ id: 'A' }] })],
    [
      'crew.0.away.0.0',
      'field-range',
      problem => Object.assign(problem, { crew: [{ id: 'p', skills: [], away: [[-5, 5]] }] }),
    ],
    [
      'fixed.0.bay',
      'name-unknown',
      problem => Object.assign(problem, { fixed: [{ bay: 'Z', from: 0, to: 5 }] }),
    ],
    ['fixed.0', 'span-empty', problem => Object.assign(problem, { fixed: [{ bay: 'A', from: 5, to: 5 }] })],
  ]
  for (const [field, code, change] of cases)
    test(`${field}: ${code}`, () => {
      const refusal = refusalOf(draft(change))
      expect([refusal.field, refusal.code]).toEqual([field, code])
      expect(refusal.message).not.toContain('\n')
    })

  test('something that is no case at all', () => {
    for (const json of [null, [], 7, 'case']) expect(refusalOf(json).field).toBe('case')
  })
})
