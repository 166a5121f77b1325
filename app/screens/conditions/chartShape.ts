/** Where a chart of readings has its marks, and how its lines break where nothing was measured. */
import { zonedOf } from '../../../main/domain/calendar/index.ts'

export interface Point {
  at: number
  x: number
  y: number
}

/** A line through the points; broken where two lie further apart in time than `gapMin`, so that a gap shows as one. */
export function linePath(points: readonly Point[], gapMin: number): string {
  return points
    .map(({ at, x, y }, i) => {
      const before = points[i - 1]
      const joined = before !== undefined && at - before.at <= gapMin
      // A lone reading is a dot: a line to itself with round ends.
      const dot = joined || (points[i + 1] && points[i + 1]!.at - at <= gapMin) ? '' : 'h0.5'
      return `${joined ? 'L' : 'M'}${x.toFixed(1)} ${y.toFixed(1)}${dot}`
    })
    .join('')
}

/** Round degrees between two values, five to ten of them. */
export function degreeTicks(least: number, most: number): number[] {
  const step = [1, 2, 5, 10, 20].find(size => (most - least) / size <= 9) ?? 50
  const ticks: number[] = []
  for (let tick = Math.ceil(least / step) * step; tick <= most; tick += step) ticks.push(tick)
  return ticks
}

/** Round wall times of the shop between two minutes, as many as `px` pixels have room for. */
export function timeTicks(fromAt: number, toAt: number, zone: string, px: number): number[] {
  const most = Math.max(2, Math.floor(px / 90))
  const hours = [1, 2, 3, 6, 12, 24, 48].find(size => (toAt - fromAt) / 60 / size <= most) ?? 96
  const ticks: number[] = []
  for (let day = zonedOf(fromAt, zone).startOfDay(); ; day = day.add({ days: Math.max(1, hours / 24) }))
    for (let hour = 0; hour < 24; hour += hours) {
      const at = Math.round(day.with({ hour }).epochMilliseconds / 60_000)
      if (at > toAt) return ticks
      if (at >= fromAt) ticks.push(at)
    }
}
