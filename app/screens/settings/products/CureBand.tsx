import type { CureProfile } from '../../../../main/domain/cure/index.ts'
import { showTemperature } from '../../../../main/domain/measure/index.ts'
import { useShop } from '../../../data/shop.ts'
import { bandShape, box } from './bandShape.ts'
import styles from './Products.module.css'

/** How a coat hardens over the days after it was laid: the likely curve between its early and its late bound. */
export function CureBand({ profile }: { profile: CureProfile }) {
  const { units } = useShop()
  const shape = bandShape(profile)
  if (!shape)
    return <p className={styles.none}>The curve appears once each figure comes after the one it follows.</p>
  const floor = box.height - box.bottom
  const words = shape.marks.map(mark => mark.label).join(', ')
  return (
    <figure className={styles.band}>
      <svg
        viewBox={`0 0 ${box.width} ${box.height}`}
        role="img"
        aria-label={`Degree of cure against time, as a band: ${words}`}
      >
        {shape.levels.map(level => (
          <g key={level.label}>
            <line
              x1={box.left}
              x2={box.width - box.right}
              y1={level.y}
              y2={level.y}
              className={styles.level}
            />
            <text x={box.left - 6} y={level.y + 4} textAnchor="end">
              {level.label}
            </text>
          </g>
        ))}
        <path d={shape.band} className={styles.bounds} />
        <path d={shape.likely} className={styles.likely} />
        {shape.ticks.map(tick => (
          <g key={tick.label}>
            <line x1={tick.x} x2={tick.x} y1={floor} y2={floor + 5} className={styles.tick} />
            <text x={tick.x} y={floor + 18} textAnchor={tick.x > box.width - 40 ? 'end' : 'middle'}>
              {tick.label}
            </text>
          </g>
        ))}
        {shape.marks.map(mark => (
          <text key={mark.sign} x={mark.x} y={mark.y + 5} textAnchor="middle" className={styles.mark}>
            {mark.sign}
          </text>
        ))}
        <text x={box.left} y={box.height - 6} className={styles.axis}>
          time after the coat, at {showTemperature(profile.referenceC, units, navigator.language)}
        </text>
      </svg>
      <figcaption>
        {shape.marks.map(mark => (
          <span key={mark.sign}>
            {mark.sign} {mark.label}
          </span>
        ))}
        <span>
          <i className={styles.swatch} /> between the early and the late bound
        </span>
      </figcaption>
    </figure>
  )
}
