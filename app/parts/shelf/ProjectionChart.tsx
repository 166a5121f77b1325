import type { ProjectionView, ShelfUnit } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { amountText } from '../../../main/domain/shelf/index.ts'
import { Chart, Rule } from '../Chart.tsx'
import { dateWords } from '../time.ts'
import { projectionShape } from './projectionShape.ts'
import styles from './shelf.module.css'

interface Props {
  name: string
  unit: ShelfUnit
  onHand: number
  projection: ProjectionView
  /** Open days until an order placed at the next chance serves; shaded. */
  leadDays?: number | null
  /** Open days until the next order is expected to be due. */
  orderDays?: number | null
  /** Rem. From ten on there is room for words at the deliveries and at the day to order. */
  height?: number
}

/** What the shelf will hold day by day, as a band: shaded while no new order can help, dashed where it runs dry. */
export function ProjectionChart({
  name,
  unit,
  onHand,
  projection,
  leadDays = null,
  orderDays = null,
  height: rem = 5.8,
}: Props) {
  const worded = rem >= 10
  return (
    <Chart
      label={chartWords(name, unit, onHand, projection)}
      shape={({ width, rem: pixels }) => {
        const height = rem * pixels
        const foot = 1.25 * pixels
        const head = worded ? 3.4 * pixels : 12
        return {
          ...projectionShape(projection, onHand, leadDays, { width, height, foot, head }, orderDays),
          height,
        }
      }}
    >
      {(shape, { width, rem: pixels }) => (
        <>
          {shape.leadX !== null && (
            <rect className={styles.lead} x={0} y={4} width={shape.leadX} height={shape.floorY - 4} />
          )}
          <path className={styles.band} d={shape.band} />
          <path className={styles.likely} d={shape.likely} />
          <Rule className={styles.axis} y={shape.floorY} from={0} to={width} />
          {shape.deliveries.map(({ x, lateX, label }) => (
            <g key={x}>
              {lateX !== null && <Rule className={styles.late} y={7} from={x} to={lateX} />}
              <path className={styles.delivery} d={`M${x - 5} 3L${x + 5} 3L${x} 12Z`} />
              {worded && (
                <text x={x + 8} y={0.8 * pixels}>
                  {say('delivery {label}', { label })}
                </text>
              )}
            </g>
          ))}
          {shape.orderX !== null && (
            <Rule className={styles.orderDay} x={shape.orderX} from={18} to={shape.floorY} />
          )}
          {shape.dryX !== null && <Rule className={styles.dry} x={shape.dryX} from={4} to={shape.floorY} />}
          {worded && shape.orderX !== null && (
            <Named x={shape.orderX} y={1.95 * pixels} width={width}>
              {shape.orderX === 0 ? say('order today') : say('next order about here')}
            </Named>
          )}
          {worded && shape.dryX !== null && projection.runsDry && (
            <Named x={shape.dryX} y={3.1 * pixels} width={width}>
              {say('dry {date}', { date: dateWords(projection.runsDry.date) })}
            </Named>
          )}
          {shape.ticks.map(tick => (
            <text
              key={tick.x}
              x={tick.end ? width : tick.x}
              y={shape.height * (1 - 0.3 / rem)}
              textAnchor={tick.end ? 'end' : 'start'}
            >
              {tick.label}
            </text>
          ))}
        </>
      )}
    </Chart>
  )
}

/** Words at an upright line, on the side where there is room. */
function Named({ x, y, width, children }: { x: number; y: number; width: number; children: string }) {
  const left = x > width * 0.8
  return (
    <text x={x + (left ? -5 : 5)} y={y} textAnchor={left ? 'end' : 'start'}>
      {children}
    </text>
  )
}

/** The chart for those who cannot see it. */
function chartWords(name: string, unit: ShelfUnit, onHand: number, projection: ProjectionView): string {
  const last = projection.days.at(-1)
  const now = { name, onHand: amountText(onHand, unit) }
  return [
    last
      ? say('{name}: {onHand} now, about {likely} by {date} ({low} to {high}).', {
          ...now,
          likely: amountText(last.likely, unit),
          date: dateWords(last.date),
          low: amountText(last.low, unit),
          high: amountText(last.high, unit),
        })
      : say('{name}: {onHand} now.', now),
    projection.runsDry
      ? say('Runs dry {date}.', { date: dateWords(projection.runsDry.date) })
      : projection.mayRunDry
        ? say('May run dry {date}.', { date: dateWords(projection.mayRunDry) })
        : '',
    ...projection.deliveries.map(each => say('Delivery due {date}.', { date: dateWords(each.date) })),
  ]
    .filter(Boolean)
    .join(' ')
}
