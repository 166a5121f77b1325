import { expect, test } from 'vitest'
import { type Problem, promise } from '../../../main/domain/schedule/index.ts'

const at = (hour: number, minute = 0) => hour * 60 + minute

/** The example that main/domain/schedule/README.md works through; its numbers follow there from the rules by hand. */
const example: Problem = {
  grid: 15,
  horizon: at(48),
  open: [
    { from: at(8), to: at(18) },
    { from: at(32), to: at(42) },
  ],
  bays: [
    { id: 'wash', can: ['wet'], closed: [] },
    { id: 'clean', can: ['clean'], closed: [] },
  ],
  crew: [{ id: 'Jo', skills: ['wash', 'coat'], away: [] }],
  fixed: [
    { bay: 'clean', from: at(8), to: at(11) },
    { bay: 'clean', from: at(16), to: at(18) },
  ],
  newJob: {
    id: 'new',
    release: at(8),
    asked: at(8),
    steps: [
      { kind: 'work', minutes: 60, needs: 'wet', skill: 'wash', crew: 1, split: false },
      { kind: 'work', minutes: 90, needs: 'clean', skill: 'coat', crew: 1, split: false },
      { kind: 'hold', minutes: 240, sameBay: true },
    ],
  },
}

test('The worked example comes out as it is written', () => {
  const { soonest, leastBlocked, askedDay } = promise(example)
  const evening = { dropOff: at(17), handover: at(24 + 13, 30), blockedOpen: 240, moves: 1 }
  expect(soonest).toMatchObject(evening)
  expect(leastBlocked).toMatchObject(evening)
  expect(askedDay).toMatchObject({ dropOff: at(8), handover: at(24 + 13, 30), blockedOpen: 780 })
})
