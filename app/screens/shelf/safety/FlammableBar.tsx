import type { SafetyWarningsView } from '../../../../main/api/views.ts'
import styles from './Safety.module.css'

interface Props {
  flammable: SafetyWarningsView['flammable']
  show(volumeMl: number): string
}

/** The flammable volume against the limit entered; hatched is what nobody can tell for want of a sheet. */
export function FlammableBar({ flammable, show }: Props) {
  const { totalMl, silentMl, limitMl } = flammable
  const most = Math.max(limitMl ?? 0, totalMl + silentMl, 1) * 1.08
  const x = (volumeMl: number) => (volumeMl / most) * 600
  return (
    <svg
      className={styles.bar}
      viewBox="0 0 600 46"
      role="img"
      aria-label={`${show(totalMl)} flammable${silentMl > 0 ? `, ${show(silentMl)} of which nothing is known` : ''}${
        limitMl === null ? ', no limit entered' : `, limit ${show(limitMl)}`
      }`}
    >
      <defs>
        <pattern
          id="unknown"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <line x1="0" y1="0" x2="0" y2="6" className={styles.hatch} />
        </pattern>
      </defs>
      <rect x={0} y={6} width={600} height={18} className={styles.room} />
      <rect
        x={0}
        y={6}
        width={x(totalMl)}
        height={18}
        className={styles.burns}
        data-state={flammable.state}
      />
      <rect x={x(totalMl)} y={6} width={x(silentMl)} height={18} fill="url(#unknown)" />
      {limitMl !== null && (
        <>
          <line x1={x(limitMl)} x2={x(limitMl)} y1={1} y2={29} className={styles.limit} />
          <text x={Math.max(0, x(limitMl))} y={42} textAnchor="end">
            limit {show(limitMl)}
          </text>
        </>
      )}
    </svg>
  )
}
