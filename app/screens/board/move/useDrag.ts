import { type PointerEvent, useRef } from 'react'
import type { StayView } from '../../../../main/api/views.ts'
import type { Canvas } from '../boardTypes.ts'
import { laneAt } from '../geometry/lanes.ts'
import { snapToGrid } from '../geometry/timeAxis.ts'
import type { MoveControl } from './useMove.ts'

interface Grip {
  stay: StayView
  x: number
  y: number
  dragging: boolean
}

/** A press that moves further than this many pixels drags; a shorter one opens the job. */
const slack = 5

/** Pointer handling of the board: a stay follows the pointer on the grid, a plain click opens its job. */
export function useDrag(
  canvas: Canvas | null,
  control: MoveControl,
  originAt: number,
  open: (jobId: string) => void,
) {
  const grip = useRef<Grip | null>(null)
  return {
    press(stay: StayView, event: PointerEvent) {
      if (event.button !== 0) return
      grip.current = { stay, x: event.clientX, y: event.clientY, dragging: false }
      ;(event.currentTarget as Element).closest('svg')?.setPointerCapture(event.pointerId)
    },
    onPointerMove(event: PointerEvent<SVGSVGElement>) {
      const held = grip.current
      if (!held || !canvas) return
      const dx = event.clientX - held.x
      const far = Math.hypot(dx, event.clientY - held.y) > slack
      if (!held.dragging && !(far && held.stay.movable)) return
      if (!held.dragging) {
        held.dragging = true
        control.pickUp(held.stay)
      }
      const { axis, board, lanes } = canvas
      const y = event.clientY - event.currentTarget.getBoundingClientRect().top
      const startAt = snapToGrid(axis.at(axis.x(held.stay.fromAt) + dx), board.gridMin, originAt)
      control.to(board.bays[laneAt(lanes, y)]!.id, startAt)
    },
    onPointerUp() {
      const held = grip.current
      grip.current = null
      if (!held) return
      if (held.dragging) control.drop('putBack')
      else open(held.stay.jobId)
    },
    onPointerCancel() {
      grip.current = null
      control.cancel()
    },
  }
}
