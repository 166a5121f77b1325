import type { StayView } from '../../../../main/api/views.ts'
import { type Canvas, rowOf } from '../boardTypes.ts'
import { laneTop } from './lanes.ts'

export interface StayBox {
  x: number
  width: number
  top: number
  height: number
}

/** Where a stay lies on the canvas; null where it is out of sight. */
export function stayBox(stay: StayView, canvas: Canvas): StayBox | null {
  const { axis, lanes, unit, board } = canvas
  const row = rowOf(board, stay.bayId)
  if (row < 0 || stay.toAt <= axis.fromAt || stay.fromAt >= axis.toAt) return null
  const x = axis.x(stay.fromAt)
  return {
    x,
    width: Math.max(4, axis.x(stay.toAt) - x - 1),
    top: laneTop(lanes, row) + 7 * unit,
    height: lanes.height - 14 * unit,
  }
}
