import { say } from '../../../../main/domain/language/index.ts'
import styles from './Use.module.css'

interface Used {
  handsOnMin: number
  blockedMin: number
  idleMin: number
  freeCureMin: number
}

const parts = [
  { key: 'handsOnMin', label: say('Hands-on'), className: styles.work },
  { key: 'blockedMin', label: say('Blocked while open'), className: styles.blocked },
  { key: 'idleMin', label: say('Empty'), className: styles.idle },
  { key: 'freeCureMin', label: say('Cures while closed'), className: styles.cure },
] as const

export function Key() {
  return (
    <p className={styles.key} aria-hidden="true">
      {parts.map(({ key, label, className }) => (
        <span key={key}>
          <i className={className} /> {label}
        </span>
      ))}
    </p>
  )
}

interface Props {
  used: Used
  name: string
  upright?: boolean
}

/** Opening hours as one bar, what cured while the shop was closed as a thinner one; for screen readers a line of words. */
export function UsedBar({ used, name, upright = false }: Props) {
  const open = used.handsOnMin + used.blockedMin + used.idleMin
  const length = (min: number) => `${open === 0 ? 0 : Math.min(100, (100 * min) / open)}%`
  const words = parts.map(({ key, label }) => `${label} ${Math.round(used[key] / 60)} h`).join(', ')
  const along = (min: number) => (upright ? { height: length(min) } : { width: length(min) })
  return (
    <span
      className={upright ? styles.upright : styles.across}
      role="img"
      aria-label={`${name}: ${words}`}
      title={words}
    >
      <span className={styles.open}>
        {parts.slice(0, 3).map(({ key, className }) => (
          <i key={key} className={className} style={along(used[key])} />
        ))}
      </span>
      <span className={styles.free}>
        <i className={styles.cure} style={along(used.freeCureMin)} />
      </span>
      {!upright && (
        <small>
          {open === 0
            ? say('closed')
            : say('{share} % hands-on', { share: Math.round((100 * used.handsOnMin) / open) })}
          {used.blockedMin > 0 &&
            say(', {blockedMin} h blocked', { blockedMin: Math.round(used.blockedMin / 60) })}
        </small>
      )}
    </span>
  )
}
