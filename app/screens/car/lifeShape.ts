import type { LifeView } from '../../../main/api/views.ts'
import type { ChartSize } from '../../parts/Chart.tsx'

/** The mean month of the calendar in days; the axis counts in these. */
export const daysAMonth = 365.2425 / 12

export interface LifeShape {
  height: number
  leftX: number
  rightX: number
  topY: number
  floorY: number
  band: string
  curve: string
  levelY: number
  renewX: number
  /** Where the renewal age may lie; ends past the picture stop at its edge. */
  range: { fromX: number; toX: number; open: boolean }
  todayX: number | null
  levels: { y: number; label: string }[]
  months: { x: number; label: string }[]
  /** What was seen: still working at, or gone between (the end not seen happen). */
  marks: {
    key: string
    working: boolean
    x: number
    y: number
    /** Gone: from the last time it was seen working. */
    fromX: number | null
    count: number
  }[]
}

/** A learned life as a picture: months since it was laid across, the share of such layers still working up. */
export function lifeShape(life: LifeView, { width, rem }: ChartSize): LifeShape {
  const { curve, level, renewDays, lowDays, highDays, ageDays, readings } = life
  const leftX = 3.2 * rem
  const rightX = width - 0.8 * rem
  const topY = 2.2 * rem
  const height = 17 * rem
  const floorY = height - 3 * rem
  const until = Math.max(1, curve.at(-1)?.age ?? 0)
  const x = (days: number) => round(leftX + (Math.min(days, until) / until) * (rightX - leftX))
  const y = (share: number) => round(floorY - share * (floorY - topY))
  const points = (side: 'share' | 'low' | 'high') => curve.map(point => `${x(point.age)} ${y(point[side])}`)
  return {
    height,
    leftX,
    rightX,
    topY,
    floorY,
    band: `M${points('high').join('L')}L${points('low').reverse().join('L')}Z`,
    curve: `M${points('share').join('L')}`,
    levelY: y(level),
    renewX: x(renewDays),
    range: { fromX: x(lowDays), toX: x(highDays ?? until), open: highDays === null || highDays > until },
    todayX: ageDays <= until ? x(ageDays) : null,
    levels: shareLevels(level).map(share => ({ y: y(share), label: `${Math.round(share * 100)} %` })),
    months: monthTicks(until).map(months => ({ x: x(months * daysAMonth), label: String(months) })),
    marks: readings.map(({ from, to, count = 1 }) => ({
      key: `${from} ${to}`,
      working: to === null,
      x: x(to ?? from),
      // Above the curve what still works, low in the picture what is gone.
      y: to === null ? topY - 0.7 * rem : y(0.3),
      fromX: to === null ? null : x(from),
      count,
    })),
  }
}

const round = (value: number) => Math.round(value * 10) / 10

/** 0, half, all and the level chosen; a round level near the chosen one gives way to it. */
function shareLevels(level: number): number[] {
  return [...[0, 0.5, 1].filter(share => Math.abs(share - level) > 0.06), level]
}

/** At most nine whole months, evenly. */
function monthTicks(untilDays: number): number[] {
  const months = Math.floor(untilDays / daysAMonth)
  const step = [1, 2, 3, 6, 12, 24, 60].find(each => months / each <= 9) ?? 120
  return Array.from({ length: Math.floor(months / step) + 1 }, (_, i) => i * step)
}
