import type { WeekView } from '../../../../main/api/views.ts'
import { dateLocaleNow, say } from '../../../../main/domain/language/index.ts'
import type { ChartSize } from '../../../parts/Chart.tsx'

export interface WeekBar {
  week: WeekView
  x: number
  width: number
  /** Top of the visits there is room for, and of all of them; over it, the rest does not fit. */
  fitY: number
  topY: number
  overflows: boolean
  /** Top of what was aimed at before; null where nothing is compared. */
  beforeY: number | null
}

export interface YearShape {
  height: number
  floorY: number
  bars: WeekBar[]
  /** If everybody came on their date, week by week. */
  asDue: string
  /** The room, in steps. */
  room: string
  /** What the room is at the end; with an arrow where it goes past the picture. */
  roomEnd: { y: number; label: string }
  levels: { y: number; label: string }[]
  months: { x: number; label: string }[]
}

/**
 * A year of weeks as a picture: a bar a week for what is aimed at, a line for what falls due, steps for the room.
 * `before` is what was aimed at before a spread, one number a week.
 */
export function yearShape(
  weeks: readonly WeekView[],
  before: readonly number[] | null,
  { width, rem }: ChartSize,
  heightRem = 12.5,
): YearShape {
  const left = 2.2 * rem
  const right = 0.4 * rem
  const top = 1.4 * rem
  const height = heightRem * rem
  const floorY = height - 1.6 * rem
  const slot = (width - left - right) / Math.max(1, weeks.length)
  const visits = Math.max(1, ...weeks.flatMap(week => [week.asDue, week.planned]), ...(before ?? []))
  // A shop with far more room than visits would see no visits: the room is cut off at half as much again.
  const most = Math.max(visits, Math.min(Math.max(...weeks.map(week => week.room)), Math.ceil(visits * 1.5)))
  const y = (count: number) => floorY - (Math.min(count, most) / most) * (floorY - top)
  const x = (i: number) => left + i * slot
  const lastRoom = weeks.at(-1)?.room ?? 0
  const bars = weeks.map((week, i) => ({
    week,
    x: x(i) + slot * 0.1,
    width: slot * 0.8,
    fitY: y(Math.min(week.planned, week.room)),
    topY: y(week.planned),
    overflows: week.planned > week.room,
    beforeY: before === null ? null : y(before[i] ?? 0),
  }))
  return {
    height,
    floorY,
    bars,
    asDue: path(weeks.map((week, i) => [x(i) + slot / 2, y(week.asDue)])),
    room: path(
      weeks.flatMap((week, i) => [
        [x(i), y(week.room)],
        [x(i + 1), y(week.room)],
      ]),
    ),
    roomEnd: {
      y: y(lastRoom),
      label: `${say('room {lastRoom}', { lastRoom })}${lastRoom > most ? ' ↑' : ''}`,
    },
    levels: levels(most, heightRem < 8 ? 2 : 4).map(count => ({ y: y(count), label: String(count) })),
    months: monthTicks(weeks, x, slot, rem),
  }
}

function path(points: readonly (readonly number[])[]): string {
  return points.length === 0 ? '' : `M${points.map(([x, y]) => `${round(x!)} ${round(y!)}`).join('L')}`
}

const round = (value: number) => Math.round(value * 10) / 10

/** 0, the most, and a round number between where there is one. */
function levels(most: number, steps: number): number[] {
  const step = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1_000].find(each => most / each <= steps) ?? most
  return Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step)
}

/** The first week that begins in each month; left out where the name would run into the one before. */
function monthTicks(weeks: readonly WeekView[], x: (i: number) => number, slot: number, rem: number) {
  const ticks: { x: number; label: string }[] = []
  weeks.forEach(({ beginsOn }, i) => {
    const day = Temporal.PlainDate.from(beginsOn)
    if (i > 0 && weeks[i - 1]!.beginsOn.slice(0, 7) === beginsOn.slice(0, 7)) return
    const label = day.toLocaleString(dateLocaleNow(), { month: 'short' })
    const last = ticks.at(-1)
    if (last && x(i) - last.x < Math.max(slot, 2.2 * rem)) return
    ticks.push({ x: x(i), label })
  })
  return ticks
}
