import type { JobView } from '../../../main/api/views.ts'
import { difference } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { Chart, Rule } from '../../parts/Chart.tsx'
import { dayHeads, hourTicks } from '../../parts/ticks.ts'
import { clockWords, columnWords, nearWords } from '../../parts/time.ts'
import boardStyles from '../board/Board.module.css'
import { type TimeAxis, timeAxis } from '../board/geometry/timeAxis.ts'
import { Block } from '../board/layers/Blocks.tsx'
import { Patterns } from '../board/layers/Patterns.tsx'
import styles from './JobLine.module.css'

/** One line from drop-off to handover: steps as planned and as they were, the cure's curve, the promise, now. */
export function JobLine({ job }: { job: JobView }) {
  const { zone, nowAt, stays } = job
  const fromAt = job.arrivedAt ?? job.dropOffAt
  const toAt = Math.max(job.leftAt ?? job.handoverAt, job.promisedAt)
  if (stays.length === 0) return null
  return (
    <Chart
      label={say('From drop-off {fromAt} to home {leftAt}', {
        fromAt: nearWords(fromAt, zone, nowAt),
        leftAt: nearWords(job.leftAt ?? job.handoverAt, zone, nowAt),
      })}
      shape={({ width, rem }) => ({
        height: 12.5 * rem,
        axis: timeAxis(job.open, fromAt - 20, toAt + 60, 0, Math.max(10, width), 0.45),
      })}
    >
      {({ axis }, { rem }) => <Line job={job} axis={axis} rem={rem} />}
    </Chart>
  )
}

function Line({ job, axis, rem }: { job: JobView; axis: TimeAxis; rem: number }) {
  const { zone, nowAt, open, profiles, stays } = job
  // Over it stand three rows of words: now, the promise, the bays.
  const box = { top: 4 * rem, height: 5.5 * rem }
  const foot = box.top + box.height
  const labels = bayLabels(
    stays.map(stay => ({ x: axis.x(stay.fromAt) + 2, letters: (job.bayNames[stay.bayId] ?? '').length })),
    rem,
  )
  const now = nowAt > axis.fromAt && nowAt < axis.toAt
  const hours = hourTicks(open, axis.toAt - axis.fromAt > 40 * 60 ? 4 : 2, zone)
  return (
    <g className={styles.line}>
      <Patterns />
      {difference([{ from: axis.fromAt, to: axis.toAt }], open).map(({ from, to }) => (
        <rect
          key={from}
          className={boardStyles.closed}
          x={axis.x(from)}
          width={axis.x(to) - axis.x(from)}
          y={box.top}
          height={box.height}
        />
      ))}
      {stays.map((stay, i) => (
        <g key={stay.fromAt}>
          <text className={styles.bay} x={labels[i]} y={box.top - 0.4 * rem}>
            {job.bayNames[stay.bayId]}
          </text>
          {stay.blocks.map(block => (
            <Block
              key={`${block.position}-${block.fromAt}`}
              block={block}
              canvas={{ axis, unit: rem / 16, board: { open, profiles, nowAt } }}
              box={box}
            />
          ))}
        </g>
      ))}
      <Rule className={styles.floor} y={foot} from={axis.left} to={axis.right} />
      {hours.map(hour => (
        <text key={hour.at} x={axis.x(hour.at)} y={foot + 1.1 * rem} textAnchor="middle">
          {hour.label}
        </text>
      ))}
      {dayHeads(axis.fromAt, axis.toAt, zone).map(day => (
        <text key={day.date} className={styles.day} x={axis.x(day.fromAt) + 4} y={foot + 2.3 * rem}>
          {axis.x(day.toAt) - axis.x(day.fromAt) > 4 * rem && columnWords(day.date)}
        </text>
      ))}
      <Flag axis={axis} at={job.promisedAt} y={box.top} foot={foot} rem={rem} late={job.lateMin > 0}>
        {say('promised {promisedAt}', { promisedAt: nearWords(job.promisedAt, zone, nowAt) })}
      </Flag>
      {job.lateMin > 0 && (
        <circle className={styles.home} cx={axis.x(job.handoverAt)} cy={foot} r={0.4 * rem} />
      )}
      {now && (
        <>
          <Rule className={styles.now} x={axis.x(nowAt)} from={1.1 * rem} to={foot + 4} />
          <text
            className={styles.nowWords}
            x={axis.x(nowAt)}
            y={0.9 * rem}
            textAnchor={axis.x(nowAt) > axis.right - 5 * rem ? 'end' : 'middle'}
          >
            {say('now {nowAt}', { nowAt: clockWords(nowAt, zone) })}
          </text>
        </>
      )}
    </g>
  )
}

/** Where the name of each bay begins: over its stay, and after the name before it where that stay is short. */
function bayLabels(names: readonly { x: number; letters: number }[], rem: number): number[] {
  let freeFrom = Number.NEGATIVE_INFINITY
  return names.map(({ x, letters }) => {
    const at = Math.max(x, freeFrom)
    freeFrom = at + (letters * 0.48 + 0.4) * rem
    return at
  })
}

interface FlagProps {
  axis: TimeAxis
  at: number
  y: number
  foot: number
  rem: number
  late: boolean
  children: string
}

/** When the car was promised home. */
function Flag({ axis, at, y, foot, rem, late, children }: FlagProps) {
  const x = axis.x(at)
  return (
    <>
      <Rule className={late ? styles.late : styles.promise} x={x} from={y - 1.4 * rem} to={foot} />
      <circle className={styles.home} cx={x} cy={foot} r={0.4 * rem} />
      <text x={x - 6} y={y - 1.6 * rem} textAnchor="end">
        {children}
      </text>
    </>
  )
}
