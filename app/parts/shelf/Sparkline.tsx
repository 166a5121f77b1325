import type { CloseProductView, ShelfUnit } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { amountText } from '../../../main/domain/shelf/index.ts'
import { Drawing, Rule } from '../Chart.tsx'
import { dateWords } from '../time.ts'
import { projectionShape } from './projectionShape.ts'
import styles from './shelf.module.css'

const box = { width: 170, height: 38, foot: 2 }

interface Props {
  name: string
  unit: ShelfUnit
  product: Pick<CloseProductView, 'usable' | 'projection'>
}

/** The projection at the size of a word: the band, the line, and where it runs dry. */
export function Sparkline({ name, unit, product }: Props) {
  const { projection, usable } = product
  const shape = projectionShape(projection, usable, null, box)
  const dry = projection.runsDry?.date ?? projection.mayRunDry
  return (
    <Drawing
      box={box}
      className={styles.spark}
      label={say('{name} over the next weeks: {usable} now, {dry}', {
        name,
        usable: amountText(usable, unit),
        dry:
          dry === null
            ? say('does not run dry')
            : projection.runsDry
              ? say('runs dry {dry}', { dry: dateWords(dry) })
              : say('may run dry {dry}', { dry: dateWords(dry) }),
      })}
    >
      <path className={styles.band} d={shape.band} />
      <path className={styles.likely} d={shape.likely} />
      <Rule className={styles.axis} y={shape.floorY} from={0} to={box.width} />
      {shape.deliveries.map(({ x }) => (
        <path key={x} className={styles.delivery} d={`M${x - 4} 1L${x + 4} 1L${x} 8Z`} />
      ))}
      {shape.dryX !== null && <Rule className={styles.dry} x={shape.dryX} from={2} to={shape.floorY} />}
    </Drawing>
  )
}
