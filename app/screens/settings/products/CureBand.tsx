import type { CureProfile } from '../../../../main/domain/cure/index.ts'
import { localeNow, say } from '../../../../main/domain/language/index.ts'
import { showTemperature } from '../../../../main/domain/measure/index.ts'
import { useShop } from '../../../data/shop.ts'
import { Drawing, Level, Rule } from '../../../parts/Chart.tsx'
import pieces from '../../../parts/pieces.module.css'
import { bandShape, box } from './bandShape.ts'
import styles from './Products.module.css'

/** How a coat hardens over the days after it was laid: the likely curve between its early and its late bound. */
export function CureBand({ profile }: { profile: CureProfile }) {
  const { units } = useShop()
  const shape = bandShape(profile)
  if (!shape)
    return (
      <p className={pieces.empty}>
        {say('The curve appears once each figure comes after the one it follows.')}
      </p>
    )
  const floor = box.height - box.bottom
  const words = shape.marks.map(mark => mark.label).join(', ')
  return (
    <Drawing
      box={box}
      label={say('Degree of cure against time, as a band: {words}', { words })}
      caption={
        <>
          {shape.marks.map(mark => (
            <span key={mark.sign}>
              {mark.sign} {mark.label}
            </span>
          ))}
          <span>
            <i className={styles.swatch} />{' '}
            {say(
              'between the early and the late bound; only the figures are known, the line between them is drawn',
            )}
          </span>
        </>
      }
    >
      {shape.levels.map(level => (
        <Level
          key={level.label}
          {...level}
          x={box.left}
          to={box.width - box.right}
          className={styles.level}
        />
      ))}
      <path d={shape.band} className={styles.bounds} />
      <path d={shape.likely} className={styles.likely} />
      {shape.ticks.map(({ x, label }) => (
        <g key={label}>
          <Rule x={x} from={floor} to={floor + 5} className={styles.tick} />
          <text x={x} y={floor + 18} textAnchor={x > box.width - 40 ? 'end' : 'middle'}>
            {label}
          </text>
        </g>
      ))}
      {shape.marks.map(mark => (
        <text key={mark.sign} x={mark.x} y={mark.y + 5} textAnchor="middle" className={styles.mark}>
          {mark.sign}
        </text>
      ))}
      <text x={box.left} y={box.height - 6}>
        {say('time after the coat, at {referenceC}', {
          referenceC: showTemperature(profile.referenceC, units, localeNow()),
        })}
      </text>
    </Drawing>
  )
}
