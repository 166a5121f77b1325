import { Fragment } from 'react'
import type { WallSpan } from '../../main/domain/calendar/index.ts'
import { say } from '../../main/domain/language/index.ts'
import { Grip } from './Grip.tsx'
import styles from './HoursEditor.module.css'
import { dayMinutes, endReach, movedEnd } from './hoursDrag.ts'
import { wallText } from './wallText.ts'

interface Props {
  /** The day, for the labels. */
  name: string
  spans: readonly WallSpan[]
  onChange(index: number, span: WallSpan): void
}

/** The openings of one day on the axis of its hours; their ends are dragged. */
export function HoursBar({ name, spans, onChange }: Props) {
  return (
    <div className={styles.bar}>
      {spans.map((span, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an opening has no other name than its place
        <Fragment key={i}>
          <span
            className={styles.open}
            style={{ left: share(span.from), width: share(Math.max(0, span.to - span.from)) }}
          />
          {ends.map(end => {
            const { least, most } = endReach(spans, i, end)
            const put = (minute: number) => onChange(i, movedEnd(spans, i, end, minute))
            return (
              <Grip
                key={end}
                label={labelOf(name, i, end)}
                now={span[end]}
                least={least}
                most={most}
                text={wallText(span[end])}
                at={span[end] / dayMinutes}
                onDrag={at => put(at * dayMinutes)}
                onStep={by => put(span[end] + by * 15)}
              />
            )
          })}
        </Fragment>
      ))}
    </div>
  )
}

const ends = ['from', 'to'] as const

function labelOf(name: string, index: number, end: 'from' | 'to'): string {
  if (index === 0) return end === 'from' ? say('{name}, opens', { name }) : say('{name}, closes', { name })
  const i = index + 1
  return end === 'from'
    ? say('{name}, opening {i}, opens', { name, i })
    : say('{name}, opening {i}, closes', { name, i })
}

const share = (minutes: number) => `${(minutes / dayMinutes) * 100}%`

/** The hours above the bars. */
export function HoursAxis() {
  return (
    <div className={styles.axis} aria-hidden="true">
      {[360, 720, 1080].map(minute => (
        <span key={minute} style={{ left: share(minute) }}>
          {wallText(minute)}
        </span>
      ))}
    </div>
  )
}
