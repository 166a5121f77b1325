import type { OrderSizeView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { Drawing } from '../Chart.tsx'
import styles from './shelf.module.css'

const parts = [
  { key: 'priceCostMinor', label: say('the goods'), className: 'price' },
  { key: 'orderCostMinor', label: say('ordering'), className: 'order' },
  { key: 'holdCostMinor', label: say('keeping'), className: 'keep' },
  { key: 'wasteCostMinor', label: say('waste'), className: 'waste' },
] as const

/** What each size of order costs a day in the long run, stacked by cause; the best one is marked. */
export function SizeBars({ sizes, show }: { sizes: OrderSizeView[]; show(minor: number): string }) {
  const most = Math.max(...sizes.map(size => size.totalMinor), 1)
  const best = sizes.find(size => size.best)
  const costs = sizes
    .map(size => say('{packs} packs {totalMinor}', { packs: size.packs, totalMinor: show(size.totalMinor) }))
    .join(', ')
  const wide = 380
  const row = 19
  const x = (minor: number) => (Math.max(0, minor) / most) * (wide - 168)
  return (
    <Drawing
      box={{ width: wide, height: sizes.length * row + 4 }}
      className={styles.figure}
      label={
        best
          ? say('What each size of order costs a day: {sizes}; {packs} is best', {
              sizes: costs,
              packs: best.packs,
            })
          : say('What each size of order costs a day: {sizes}', { sizes: costs })
      }
      caption={
        <>
          {say('cost a day by size of order:')}{' '}
          {parts.map(part => (
            <span key={part.key}>
              <i className={`${styles.key} ${styles[part.className]}`} /> {part.label}{' '}
            </span>
          ))}
        </>
      }
    >
      {sizes.map((size, i) => {
        let from = 72
        return (
          <g key={size.packs}>
            <text x={64} y={i * row + 14} textAnchor="end" className={size.best ? styles.best : undefined}>
              {size.best ? '★ ' : ''}
              {say('{packs} {packs, plural, one {pack} other {packs}}', { packs: size.packs })}
            </text>
            {parts.map(part => {
              const width = x(size[part.key])
              const bar = (
                <rect
                  key={part.key}
                  x={from}
                  y={i * row + 3}
                  width={width}
                  height={row - 5}
                  className={styles[part.className]}
                />
              )
              from += width
              return bar
            })}
            <text x={from + 6} y={i * row + 14} className={size.best ? styles.best : undefined}>
              {show(size.totalMinor)}
            </text>
          </g>
        )
      })}
    </Drawing>
  )
}
