import { memo } from 'react'
import { difference } from '../../../../main/domain/calendar/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { Rule } from '../../../parts/Chart.tsx'
import { dayHeads, hourTicks } from '../../../parts/ticks.ts'
import { columnWords, dateWords } from '../../../parts/time.ts'
import styles from '../Board.module.css'
import type { Canvas } from '../boardTypes.ts'
import { laneTop } from '../geometry/lanes.ts'
import { BayLabel } from './BayLabel.tsx'

const steps = [1, 2, 3, 4, 6, 12]

/** How many hours lie between two hour labels, so that they keep apart. */
function hoursBetweenTicks({ board, axis, unit }: Canvas): number {
  const span = board.open[0]
  if (!span) return 12
  const perHour = (axis.x(span.from + 60) - axis.x(span.from)) / unit
  return steps.find(hours => hours * perHour >= 40) ?? 12
}

/** What stands still: days, hours, closed time, bays and their closures. */
export const HoursLayer = memo(function HoursLayer({ canvas }: { canvas: Canvas }) {
  const { board, axis, lanes, unit } = canvas
  const bottom = lanes.top + lanes.height * lanes.count
  const days = dayHeads(axis.fromAt, axis.toAt, board.zone)
  const ticks = hourTicks(board.open, hoursBetweenTicks(canvas), board.zone)
  const closed = difference([{ from: axis.fromAt, to: axis.toAt }], board.open)
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a drawn group takes no focus
    <g aria-hidden="true">
      {closed.map(span => (
        <rect
          key={span.from}
          className={styles.closed}
          x={axis.x(span.from)}
          width={axis.x(span.to) - axis.x(span.from)}
          y={lanes.top}
          height={bottom - lanes.top}
        />
      ))}
      {ticks.map(tick => (
        <g key={tick.at}>
          <Rule className={styles.rule} x={axis.x(tick.at)} from={lanes.top - 4 * unit} to={bottom} />
          <text className={styles.soft} x={axis.x(tick.at)} y={lanes.top - 9 * unit} textAnchor="middle">
            {tick.label}
          </text>
        </g>
      ))}
      {days.map(day => {
        const width = axis.x(day.toAt) - axis.x(day.fromAt)
        const open = board.open.filter(span => span.from < day.toAt && span.to > day.fromAt)
        const middle = open.length
          ? (axis.x(Math.max(open[0]!.from, day.fromAt)) + axis.x(Math.min(open.at(-1)!.to, day.toAt))) / 2
          : axis.x(day.fromAt) + width / 2
        return (
          <g key={day.date}>
            <Rule className={styles.midnight} x={axis.x(day.fromAt)} from={lanes.top} to={bottom} />
            <text
              className={open.length ? styles.day : styles.soft}
              x={middle}
              y={16 * unit}
              textAnchor="middle"
            >
              {width > 120 * unit ? dateWords(day.date) : columnWords(day.date, width > 44 * unit)}
            </text>
          </g>
        )
      })}
      {board.bays.map((bay, index) => {
        const top = laneTop(lanes, index)
        return (
          <g key={bay.id}>
            <Rule className={styles.rule} y={top} from={0} to={axis.right} />
            <BayLabel bay={bay} x={16 * unit} y={top} width={axis.left - 22 * unit} height={lanes.height} />
            {bay.closures.map(closure => (
              <g key={closure.fromAt}>
                <rect
                  className={styles.closure}
                  x={axis.x(closure.fromAt)}
                  width={axis.x(closure.toAt) - axis.x(closure.fromAt)}
                  y={top + 8 * unit}
                  height={lanes.height - 16 * unit}
                />
                <text className={styles.soft} x={axis.x(closure.fromAt) + 7 * unit} y={top + 24 * unit}>
                  {closure.reason || say('closed')}
                </text>
              </g>
            ))}
          </g>
        )
      })}
    </g>
  )
})
