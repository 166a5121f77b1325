import { expect, test } from 'vitest'
import type { FloorPlan } from '../../../main/domain/schedule/index.ts'
import { laidView } from '../../../main/services/dayPlan/relayView.ts'
import type { Run } from '../../../main/services/dayPlan/runs.ts'

const wash = { kind: 'work', minutes: 60, skill: null, crew: 0, split: false } as const
const at = (bay: string, start: number, handover = start + 60) => ({
  steps: [{ bay, start, end: start + 60, crew: ['jo'] }],
  handover,
})
const names = { bays: new Map([['a', 'Wash bay']]), crew: new Map([['jo', 'Jo']]) }

/** A search over two cars that are to come at 0 and 60 in bay a. */
function view(plan: FloorPlan) {
  const run: Run<null> = {
    id: 'run',
    asked: null,
    startedAt: 0,
    stopped: false,
    cars: [],
    laying: {
      plan,
      objective: undefined,
      bound: { weightedTardiness: 0, blockedOpen: 0, moves: 0 },
      proven: false,
      conflicts: 0,
    },
    task: {
      floor: {
        grid: 15,
        horizon: 480,
        open: [{ from: 0, to: 480 }],
        bays: ['a', 'b'].map(id => ({ id, can: [], closed: [] })),
        crew: [{ id: 'jo', skills: [], away: [] }],
        fixed: [],
        jobs: ['one', 'two'].map(id => ({ id, release: 0, due: 480, weight: 1, steps: [wash] })),
      },
      present: { one: at('a', 0), two: at('a', 60) },
    },
  }
  return laidView(run, false, names)
}

test('a car that only stands elsewhere keeps its times; one that is home later does not', () => {
  const times = (own: ReturnType<typeof at>) =>
    view({ one: own, two: at('a', 60) }).changes.map(change => [change.jobId, change.sameTimes])
  expect(times(at('b', 0))).toEqual([['one', true]])
  expect(times(at('b', 0, 75))).toEqual([['one', false]])
  expect(times(at('b', 15))).toEqual([['one', false]])
})

test('cars that change their turns go together, and each is told by the names of bay and people', () => {
  const { changes, cars, found } = view({ one: at('a', 60), two: at('a', 0) })
  expect({ cars, found }).toEqual({ cars: 2, found: true })
  expect(changes.map(({ jobId, with: others }) => [jobId, others])).toEqual([
    ['two', ['one']],
    ['one', ['two']],
  ])
  expect(changes[0]!.to).toEqual({ dropOffAt: 0, handoverAt: 60, bays: ['Wash bay'], people: ['Jo'] })
})
