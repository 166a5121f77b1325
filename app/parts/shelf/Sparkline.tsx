import type { CloseProductView, ShelfUnit } from '../../../main/api/views.ts'
import { dateWords } from '../time.ts'
import { amountText } from './amounts.ts'
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
    <svg
      className={styles.spark}
      viewBox={`0 0 ${box.width} ${box.height}`}
      role="img"
      aria-label={`${name} over the next weeks: ${amountText(usable, unit)} now, ${
        dry ? `${projection.runsDry ? 'runs' : 'may run'} dry ${dateWords(dry)}` : 'does not run dry'
      }`}
    >
      <path className={styles.band} d={shape.band} />
      <path className={styles.likely} d={shape.likely} />
      <line className={styles.axis} x1={0} x2={box.width} y1={shape.floorY} y2={shape.floorY} />
      {shape.deliveries.map(({ x }) => (
        <path key={x} className={styles.delivery} d={`M${x - 4} 1L${x + 4} 1L${x} 8Z`} />
      ))}
      {shape.dryX !== null && (
        <line className={styles.dry} x1={shape.dryX} x2={shape.dryX} y1={2} y2={shape.floorY} />
      )}
    </svg>
  )
}
