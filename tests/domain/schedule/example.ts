import type { Problem } from '../../../main/domain/schedule/index.ts'

export const at = (hour: number, minute = 0) => hour * 60 + minute

/** The example that main/domain/schedule/README.md works through; its numbers follow there from the rules by hand. */
export const example: Problem = {
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
