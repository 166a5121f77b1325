import { useId } from 'react'
import type { WeekView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { Chart } from '../../../parts/Chart.tsx'
import { dateWords } from '../../../parts/time.ts'
import styles from './Year.module.css'
import { yearShape } from './yearShape.ts'

interface Props {
  weeks: readonly WeekView[]
  /** What was aimed at before, week by week, where a spread is being looked at. */
  before: readonly number[] | null
  /** The head of a screen: lower, and without the key. */
  head?: boolean
}

/** The year of visits: bars for what is aimed at, a line for what falls due, steps for the room. */
export function YearChart({ weeks, before, head = false }: Props) {
  const id = useId()
  return (
    <Chart
      label={yearWords(weeks, before)}
      shape={size => yearShape(weeks, before, size, head ? 5.5 : undefined)}
      caption={
        head ? null : (
          <>
            <span>
              <i className={styles.keyFits} /> {say('aimed at')}
            </span>
            <span>
              <i className={styles.keyOverflow} /> {say('aimed at, no room for it')}
            </span>
            {before && (
              <span>
                <i className={styles.keyBefore} /> {say('aimed at before')}
              </span>
            )}
            <span>
              <i className={styles.keyDue} /> {say('if everyone came on their due date')}
            </span>
            <span>
              <i className={styles.keyRoom} /> {say('room beside booked work')}
            </span>
          </>
        )
      }
    >
      {(shape, size) => (
        <>
          <defs>
            <pattern id={id} width={6} height={6} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <rect width={6} height={6} className={styles.overflowGround} />
              <rect width={2.5} height={6} className={styles.overflowLine} />
            </pattern>
          </defs>
          {shape.levels.map(level => (
            <g key={level.label}>
              <line x1={0} x2={size.width} y1={level.y} y2={level.y} className={styles.level} />
              <text x={0} y={level.y - 3}>
                {level.label}
              </text>
            </g>
          ))}
          {shape.bars.map(bar => (
            <g key={bar.week.beginsOn}>
              <title>{weekWords(bar.week)}</title>
              <rect
                x={bar.x}
                y={bar.fitY}
                width={bar.width}
                height={shape.floorY - bar.fitY}
                className={styles.fits}
              />
              {bar.overflows && (
                <rect
                  x={bar.x}
                  y={bar.topY}
                  width={bar.width}
                  height={bar.fitY - bar.topY}
                  fill={`url(#${id})`}
                  className={styles.overflow}
                />
              )}
              {bar.beforeY !== null && (
                <path
                  d={`M${bar.x} ${shape.floorY}V${bar.beforeY}H${bar.x + bar.width}V${shape.floorY}`}
                  className={styles.before}
                />
              )}
            </g>
          ))}
          <path d={shape.room} className={styles.room} />
          <text x={size.width} y={shape.roomEnd.y - 5} textAnchor="end">
            {shape.roomEnd.label}
          </text>
          {!head && <path d={shape.asDue} className={styles.asDue} />}
          <line x1={0} x2={size.width} y1={shape.floorY} y2={shape.floorY} className={styles.axis} />
          {shape.months.map(month => (
            <text key={month.x} x={month.x} y={shape.height - 4}>
              {month.label}
            </text>
          ))}
        </>
      )}
    </Chart>
  )
}

function weekWords({ beginsOn, week, asDue, planned, room }: WeekView): string {
  return say('Week {week}, from {beginsOn}: {asDue} due, {planned} aimed at, room for {room}', {
    week,
    beginsOn: dateWords(beginsOn),
    asDue,
    planned,
    room,
  })
}

/** The picture for those who cannot see it; the table beneath has every week. */
function yearWords(weeks: readonly WeekView[], before: readonly number[] | null): string {
  const full = weeks.filter(week => week.planned > week.room)
  const busiest = weeks.reduce<WeekView | null>(
    (most, week) => (week.asDue > (most?.asDue ?? 0) ? week : most),
    null,
  )
  const parts = [
    say('Visits of the coming year by week: {weeks} aimed at', {
      weeks: sum(weeks.map(week => week.planned)),
    }),
    busiest
      ? say('most fall due in week {week}: {asDue}, with room for {room}', {
          week: busiest.week,
          asDue: busiest.asDue,
          room: busiest.room,
        })
      : say('none falls due'),
    full.length === 0
      ? say('no week holds more than there is room for')
      : say('too many in {full, plural, one {week} other {weeks}} {full2}', {
          full: full.length,
          full2: full.map(week => week.week).join(', '),
        }),
    ...(before
      ? [
          say('before it was too many in {weeks} weeks', {
            weeks: weeks.filter((week, i) => (before[i] ?? 0) > week.room).length,
          }),
        ]
      : []),
  ]
  return `${parts.join('; ')}.`
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)
