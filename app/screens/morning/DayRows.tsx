import { Link } from '@tanstack/react-router'
import type { MorningView } from '../../../main/api/views.ts'
import { cureCurve } from '../../../main/domain/cure/index.ts'
import { hourTicks } from '../../parts/ticks.ts'
import styles from './DayRows.module.css'
import { type Bar, drawnSpan, type Part, type Row } from './daySheet.ts'

interface Props {
  sheet: MorningView
  label: string
  rows: Row[]
  className?: string | undefined
}

/** The day as a picture: a row each, the opening hours across, set in shares of the width so that it prints as it is. */
export function DayRows({ sheet, label, rows, className = '' }: Props) {
  const { from, to } = drawnSpan(sheet)
  const share = (at: number) => ((Math.min(to, Math.max(from, at)) - from) / (to - from)) * 100
  const hours = hourTicks([{ from, to }], 1, sheet.zone)
  const now = sheet.nowAt > from && sheet.nowAt < to ? share(sheet.nowAt) : null
  return (
    <section className={`${styles.picture} ${className}`} aria-label={label}>
      <div className={styles.hours} aria-hidden="true">
        {hours.map(hour => (
          <span key={hour.at} style={{ left: `${share(hour.at)}%` }}>
            {hour.label}
          </span>
        ))}
      </div>
      {rows.map(row => (
        <div key={row.id} className={styles.row}>
          <h2>
            {row.name} {row.about && <small>{row.about}</small>}
          </h2>
          <ul className={styles.track}>
            {hours.map(hour => (
              <li
                key={hour.at}
                className={styles.hour}
                style={{ left: `${share(hour.at)}%` }}
                aria-hidden="true"
              />
            ))}
            {row.bars
              .filter(bar => bar.toAt > from && bar.fromAt < to)
              .map(bar => (
                <BarView key={bar.key} bar={bar} sheet={sheet} share={share} />
              ))}
            {now !== null && <li className={styles.now} style={{ left: `${now}%` }} aria-hidden="true" />}
          </ul>
        </div>
      ))}
    </section>
  )
}

interface BarProps {
  bar: Bar
  sheet: MorningView
  share(at: number): number
}

function BarView({ bar, sheet, share }: BarProps) {
  const left = share(bar.fromAt)
  const width = Math.max(0.6, share(bar.toAt) - left)
  const within = (at: number) => ((share(at) - left) / width) * 100
  return (
    <li className={styles.bar} style={{ left: `${left}%`, width: `${width}%` }}>
      <Link to="/jobs/$id" params={{ id: bar.jobId }} title={`${bar.plate}, ${bar.words}`}>
        <span className={styles.parts} aria-hidden="true">
          {bar.parts.map(part => {
            const place = {
              left: `${within(part.fromAt)}%`,
              width: `${Math.max(1, within(part.toAt) - within(part.fromAt))}%`,
            }
            return (
              <span key={part.fromAt} className={styles[part.kind]} style={place}>
                {part.kind === 'cure' && <Curve part={part} sheet={sheet} />}
              </span>
            )
          })}
        </span>
        <b>{bar.plate}</b>
        <small>{bar.words}</small>
      </Link>
    </li>
  )
}

/** How a coat hardens over its stretch, by its profile's likely curve. */
function Curve({ part, sheet }: { part: Part; sheet: MorningView }) {
  const profile = part.productId === null ? undefined : sheet.profiles[part.productId]
  const { from, to } = drawnSpan(sheet)
  const start = Math.max(part.fromAt, from)
  const end = Math.min(part.toAt, to)
  if (!profile || part.coatEndAt === null || end <= start) return null
  const { degreeAt } = cureCurve(profile)
  const points = Array.from({ length: 25 }, (_, i) => {
    const at = start + ((end - start) * i) / 24
    return `${(i * 100) / 24} ${(100 - 92 * degreeAt(Math.max(0, at - (part.coatEndAt ?? at))).likely).toFixed(1)}`
  })
  return (
    <svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
      <path d={`M0 100L${points.join('L')}L100 100Z`} />
    </svg>
  )
}
