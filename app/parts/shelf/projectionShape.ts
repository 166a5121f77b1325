import type { ProjectionView } from '../../../main/api/views.ts'
import { tickWords } from './amounts.ts'

/** The chart's own units; it keeps its height and takes the width it is given. */
export interface ChartBox {
  width: number
  height: number
  /** Left free under the axis for dates, and over everything for words. */
  foot: number
  head?: number
}

export interface ProjectionShape {
  /** Between as little and as much as one day in ten. */
  band: string
  /** As expected, in steps. */
  likely: string
  floorY: number
  /** The days an order placed now cannot help; null: not known. */
  leadX: number | null
  /** The day the next order is expected to be due; null: not within the picture, or not known. */
  orderX: number | null
  dryX: number | null
  deliveries: { x: number; lateX: number | null; label: string }[]
  ticks: { x: number; label: string; end: boolean }[]
}

/**
 * A projection as paths. Day `i` fills the width from `i` to `i + 1` at the level its close leaves; the first level is
 * what stands on the shelf now. `leadDays` and `orderDays` are numbers of open days, counted off on the calendar.
 */
export function projectionShape(
  { days, runsDry, mayRunDry, deliveries }: ProjectionView,
  onHand: number,
  leadDays: number | null,
  { width, height, foot, head = 12 }: ChartBox,
  orderDays: number | null = null,
): ProjectionShape {
  const most = Math.max(onHand, ...days.map(day => day.high), 1) * 1.06
  const floorY = height - foot
  const x = (day: number) => round((day / Math.max(1, days.length)) * width)
  const y = (amount: number) => round(floorY - (Math.max(0, amount) / most) * (floorY - head))
  const steps = (of: 'low' | 'likely' | 'high') =>
    days.flatMap((day, i) => [
      [x(i), y(day[of])],
      [x(i + 1), y(day[of])],
    ])
  const path = (points: number[][]) => points.map(point => point.join(' ')).join('L')
  const indexOf = (date: string) => days.findIndex(day => day.date === date)
  const within = (date: string) => {
    const index = indexOf(date)
    return index < 0 ? null : x(index)
  }
  return {
    band: days.length > 0 ? `M${path(steps('high'))}L${path(steps('low').reverse())}Z` : '',
    likely: days.length > 0 ? `M0 ${y(onHand)}L${path(steps('likely'))}` : '',
    floorY,
    leadX: leadDays === null ? null : x(afterOpenDays(days, leadDays)),
    orderX: orderDays === null ? null : within(days[afterOpenDays(days, orderDays)]?.date ?? ''),
    dryX: runsDry ? within(runsDry.date) : mayRunDry ? within(mayRunDry) : null,
    deliveries: deliveries.flatMap(delivery => {
      const at = within(delivery.date)
      return at === null ? [] : [{ x: at, lateX: within(delivery.lateOn), label: tickWords(delivery.date) }]
    }),
    // A date is about as wide as three lines of the foot are high.
    ticks: ticksOf(days, x, 3 * foot),
  }
}

/** Dates a whole number of weeks apart, each with `room` for its words; the last one stands before the end. */
function ticksOf(
  days: ProjectionView['days'],
  x: (day: number) => number,
  room: number,
): ProjectionShape['ticks'] {
  const weeks = Math.max(1, Math.ceil(days.length / 7 / 5), Math.ceil(room / Math.max(1, x(7))))
  const ticks = days.flatMap((day, i) =>
    i % (7 * weeks) === 0 ? [{ x: x(i), label: tickWords(day.date), end: false }] : [],
  )
  const [last, width] = [ticks.at(-1), x(days.length)]
  if (!last || width - last.x >= room || ticks.length < 2) return ticks
  const end = width - ticks.at(-2)!.x >= 2 * room
  return end ? ticks.with(-1, { ...last, end }) : ticks.slice(0, -1)
}

/** The day on which so many open days, today among them, are over. */
function afterOpenDays(days: ProjectionView['days'], openDays: number): number {
  let left = openDays
  for (const [i, day] of days.entries()) {
    if (left <= 0) return i
    if (day.open) left--
  }
  return days.length
}

const round = (value: number) => Math.round(value * 10) / 10
