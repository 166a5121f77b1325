import { useId } from 'react'
import type { SafetyWarningsView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { Chart } from '../../../parts/Chart.tsx'
import styles from './Safety.module.css'

interface Props {
  flammable: SafetyWarningsView['flammable']
  show(volumeMl: number): string
}

/** The flammable volume against the limit entered; hatched is what nobody can tell for want of a sheet. */
export function FlammableBar({ flammable, show }: Props) {
  const id = useId()
  const { totalMl, silentMl, limitMl, state } = flammable
  const most = Math.max(limitMl ?? 0, totalMl + silentMl, 1) * 1.08
  const silent =
    silentMl > 0 ? say(', {silentMl} of which nothing is known', { silentMl: show(silentMl) }) : ''
  const limit =
    limitMl === null ? say(', no limit entered') : say(', limit {limitMl}', { limitMl: show(limitMl) })
  return (
    <Chart
      label={say('{totalMl} flammable{silent}{limit}', { totalMl: show(totalMl), silent, limit })}
      shape={({ width, rem }) => ({
        height: 2.8 * rem,
        bar: { y: 0.3 * rem, height: 1.2 * rem },
        x: (volumeMl: number) => (volumeMl / most) * width,
      })}
    >
      {({ height, bar, x }, { width }) => (
        <>
          <defs>
            <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <line x1="0" y1="0" x2="0" y2="6" className={styles.hatch} />
            </pattern>
          </defs>
          <rect {...bar} x={0} width={width} className={styles.room} />
          <rect {...bar} x={0} width={x(totalMl)} className={styles.burns} data-state={state} />
          <rect {...bar} x={x(totalMl)} width={x(silentMl)} fill={`url(#${id})`} />
          {limitMl !== null && (
            <>
              <line x1={x(limitMl)} x2={x(limitMl)} y1={0} y2={height * 0.65} className={styles.limit} />
              <text x={x(limitMl)} y={height - 3} textAnchor="end">
                {say('limit {limitMl}', { limitMl: show(limitMl) })}
              </text>
            </>
          )}
        </>
      )}
    </Chart>
  )
}
