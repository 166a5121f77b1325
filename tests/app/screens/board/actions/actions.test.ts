import { describe, expect, test } from 'vitest'
import {
  actionFor,
  type BoardContext,
  boardActions,
} from '../../../../../app/screens/board/actions/actions.ts'
import type { Move, MoveControl } from '../../../../../app/screens/board/move/useMove.ts'
import type { StayView } from '../../../../../main/api/views.ts'
import { at, board, stay } from '../sampleBoard.ts'

/** The board without a browser: what was done is written down in words. */
function drive(chosen: StayView, others: StayView[] = []) {
  const said: string[] = []
  const control: MoveControl = {
    move: null,
    pickUp: picked => {
      said.push(`pick up ${picked.jobId}`)
      control.move = {
        stay: picked,
        bayId: picked.bayId,
        startAt: picked.fromAt,
        verdict: null,
        released: null,
      }
    },
    to: (bayId, startAt) => {
      said.push(`to ${bayId} ${startAt - at(0, 0)}`)
      control.move = { ...(control.move as Move), bayId, startAt }
    },
    drop: ifRefused => said.push(`drop ${ifRefused}`),
    cancel: () => {
      said.push('cancel')
      control.move = null
    },
  }
  const context: BoardContext = {
    board: board([chosen, ...others]),
    stay: chosen,
    control,
    focus: next => said.push(`focus ${next.jobId}`),
    open: id => said.push(`open ${id}`),
    people: id => said.push(`people ${id}`),
  }
  return {
    said,
    control,
    press(key: string, shift = false) {
      actionFor(key, context)?.run(context, { shift })
      return said.at(-1)
    },
  }
}

describe('the keys of the board', () => {
  test('look, open, pick up, move and put down', () => {
    const desk = drive(stay('one', 'a', at(0, 9), at(0, 10)), [stay('two', 'a', at(0, 12), at(0, 13))])
    expect(desk.press('p')).toBe('people one')
    desk.said.length = 0
    for (const key of ['ArrowRight', 'Enter', 'm', 'ArrowRight', 'ArrowDown', 'Enter']) desk.press(key)
    expect(desk.said).toEqual(['focus two', 'open one', 'pick up one', 'to a 555', 'to b 555', 'drop keep'])
  })

  test('shift goes an hour, Escape leaves everything where it was', () => {
    const desk = drive(stay('one', 'a', at(0, 9), at(0, 10)))
    desk.press('m')
    expect(desk.press('ArrowRight', true)).toBe('to a 600')
    expect(desk.press('Escape')).toBe('cancel')
    expect(desk.control.move).toBeNull()
  })

  test('a stay that has begun is not picked up', () => {
    const desk = drive(stay('one', 'a', at(0, 9), at(0, 10), { movable: false }))
    expect(desk.press('m')).toBeUndefined()
  })

  test('N goes where the refusal says it would fit', () => {
    const desk = drive(stay('one', 'a', at(0, 9), at(0, 10)))
    desk.press('m')
    expect(desk.press('n')).toBe('pick up one')
    desk.control.move!.verdict = { ok: false, reasons: ['taken'], nearest: { bayId: 'c', startAt: at(1, 8) } }
    expect(desk.press('n')).toBe('to c 1920')
  })

  test('no two actions want the same key in the same state', () => {
    for (const lifted of [false, true])
      for (const key of new Set(boardActions.flatMap(action => action.keys))) {
        const desk = drive(stay('one', 'a', at(0, 9), at(0, 10)))
        if (lifted) desk.press('m')
        const context = {
          board: board([]),
          stay: stay('one', 'a', 0, 1),
          control: desk.control,
        } as unknown as BoardContext
        expect(
          boardActions.filter(action => action.keys.includes(key) && action.when(context)).length,
        ).toBeLessThan(2)
      }
  })
})
