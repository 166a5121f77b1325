import type { TimeAxis } from './timeAxis.ts'

export interface Box {
  top: number
  height: number
}

/**
 * The outline of a hold as an SVG path: from the coat at `fromAt` to `toAt`, as high as the degree of cure reached
 * (0 the floor, 1 the top of the box). `degree` takes minutes since the coat.
 */
export function curvePath(
  axis: TimeAxis,
  coatEndAt: number,
  fromAt: number,
  toAt: number,
  box: Box,
  degree: (elapsedMin: number) => number,
): string {
  const floor = box.top + box.height
  const from = Math.max(fromAt, axis.fromAt)
  const to = Math.min(toAt, axis.toAt)
  if (from >= to) return ''
  const steps = 32
  const points = Array.from({ length: steps + 1 }, (_, index) => {
    const at = from + ((to - from) * index) / steps
    const y = floor - box.height * degree(Math.max(0, at - coatEndAt))
    return `L${axis.x(at).toFixed(1)} ${y.toFixed(1)}`
  })
  return `M${axis.x(from).toFixed(1)} ${floor}${points.join('')}L${axis.x(to).toFixed(1)} ${floor}Z`
}
