import type { BoardView, StayView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { neighbour, nudge, otherBay } from '../move/steps.ts'
import type { MoveControl } from '../move/useMove.ts'

/** What an action may work on. */
export interface BoardContext {
  board: BoardView
  stay: StayView
  control: MoveControl
  focus(stay: StayView): void
  open(jobId: string): void
  /** Asks who is to do what of a car. */
  people(jobId: string): void
}

/** One thing a key does to the chosen stay; the help line, the keys and the tests read the same list. */
export interface BoardAction {
  name: string
  label: string
  keys: string[]
  when(context: BoardContext): boolean
  run(context: BoardContext, key: { shift: boolean }): void
}

const still = ({ control }: BoardContext) => control.move === null
const lifted = ({ control }: BoardContext) => control.move !== null

function look(
  name: string,
  label: string,
  key: string,
  arrow: 'left' | 'right' | 'up' | 'down',
): BoardAction {
  return {
    name,
    label,
    keys: [key],
    when: still,
    run: ({ board, stay, focus }) => focus(neighbour(board, stay, arrow)),
  }
}

function shift(name: string, label: string, key: string, sign: 1 | -1): BoardAction {
  return {
    name,
    label,
    keys: [key],
    when: lifted,
    run: ({ board, control }, { shift: far }) => {
      const place = nudge(board, control.move!, sign * (far ? Math.max(60, board.gridMin) : board.gridMin))
      control.to(place.bayId, place.startAt)
    },
  }
}

function change(name: string, label: string, key: string, direction: 1 | -1): BoardAction {
  return {
    name,
    label,
    keys: [key],
    when: lifted,
    run: ({ board, control }) => {
      const place = otherBay(board, control.move!, direction)
      control.to(place.bayId, place.startAt)
    },
  }
}

export const boardActions: BoardAction[] = [
  look('lookLeft', say('the stay before'), 'ArrowLeft', 'left'),
  look('lookRight', say('the stay after'), 'ArrowRight', 'right'),
  look('lookUp', say('the bay above'), 'ArrowUp', 'up'),
  look('lookDown', say('the bay below'), 'ArrowDown', 'down'),
  {
    name: 'open',
    label: say('open the job'),
    keys: ['Enter'],
    when: still,
    run: ({ stay, open }) => open(stay.jobId),
  },
  {
    name: 'pickUp',
    label: say('pick up to move'),
    keys: ['m', ' '],
    when: context => still(context) && context.stay.movable,
    run: ({ stay, control }) => control.pickUp(stay),
  },
  {
    name: 'people',
    label: say('give its steps to somebody else'),
    keys: ['p'],
    when: still,
    run: ({ stay, people }) => people(stay.jobId),
  },
  shift('earlier', say('earlier (with Shift an hour)'), 'ArrowLeft', -1),
  shift('later', say('later (with Shift an hour)'), 'ArrowRight', 1),
  change('bayUp', say('to the bay above'), 'ArrowUp', -1),
  change('bayDown', say('to the bay below'), 'ArrowDown', 1),
  {
    name: 'nearest',
    label: say('to the nearest place that works'),
    keys: ['n'],
    when: ({ control }) => control.move?.verdict?.ok === false && control.move.verdict.nearest !== null,
    run: ({ control }) => {
      const verdict = control.move!.verdict
      if (verdict?.ok === false && verdict.nearest) control.to(verdict.nearest.bayId, verdict.nearest.startAt)
    },
  },
  {
    name: 'drop',
    label: say('put down here'),
    keys: ['Enter', ' '],
    when: lifted,
    run: ({ control }) => control.drop('keep'),
  },
  {
    name: 'cancel',
    label: say('leave it where it was'),
    keys: ['Escape'],
    when: lifted,
    run: ({ control }) => control.cancel(),
  },
]

/** The action a key stands for now, if any. */
export function actionFor(key: string, context: BoardContext): BoardAction | undefined {
  return boardActions.find(action => action.keys.includes(key) && action.when(context))
}
