import { useElementSize } from '@mantine/hooks'
import type { ConditionsView, ReadingView } from '../../../main/api/views.ts'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { useShop } from '../../data/shop.ts'
import { degreeSign, degreesShown } from '../../parts/degrees.ts'
import { clockWords, columnWords, longWords } from '../../parts/time.ts'
import styles from './Conditions.module.css'
import { degreeTicks, linePath, type Point, timeTicks } from './chartShape.ts'

interface Props {
  readings: readonly ReadingView[]
  fromAt: number
  toAt: number
  zone: string
  product: ConditionsView['products'][number] | null
}

/** Grows with the text, so that it looks the same on a large screen. */
function measures() {
  const unit = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 16
  return { unit, left: 46 * unit, height: 210 * unit, humidityHeight: 70 * unit, gap: 20 * unit }
}

/** Air, panel and dew point over time with the range a product's profile gives; the humidity below. */
export function ReadingsChart({ readings, fromAt, toAt, zone, product }: Props) {
  const { ref, width } = useElementSize()
  const { units } = useShop()
  const { unit, left, height, humidityHeight, gap } = measures()
  const values = readings.flatMap(({ airC, panelC, dewC }) => [airC, panelC ?? airC, dewC ?? airC])
  const range = product ? [product.minC, product.maxC] : []
  const least = Math.min(...values, ...range, 10) - 2
  const most = Math.max(...values, ...range, 25) + 2
  const x = (at: number) => left + ((at - fromAt) / (toAt - fromAt)) * Math.max(0, width - left - 8)
  const y = (celsius: number) => height - ((celsius - least) / (most - least)) * (height - 14 * unit)
  const foot = height + gap + humidityHeight
  const yPercent = (percent: number) => foot - (percent / 100) * humidityHeight
  const line = (of: (reading: ReadingView) => number | null, scale: (value: number) => number) =>
    linePath(
      readings.flatMap((reading): Point[] => {
        const value = of(reading)
        return value === null ? [] : [{ at: reading.at, x: x(reading.at), y: scale(value) }]
      }),
      Math.max(90, (toAt - fromAt) / 100),
    )
  return (
    <div ref={ref}>
      <svg
        width={width}
        height={foot + 24 * unit}
        role="img"
        aria-label={`Air, panel and dew point of the bay, ${longWords(fromAt, zone)} to ${longWords(toAt, zone)}`}
      >
        {product && (
          <rect
            className={styles.range}
            x={left}
            width={Math.max(0, width - left - 8)}
            y={y(product.maxC)}
            height={y(product.minC) - y(product.maxC)}
          />
        )}
        {degreeTicks(degreesShown(least, units), degreesShown(most, units)).map(tick => {
          const celsius = units === 'us' ? (tick - 32) / 1.8 : tick
          return (
            <g key={tick}>
              <line className={styles.grid} x1={left} x2={width - 8} y1={y(celsius)} y2={y(celsius)} />
              <text x={left - 6 * unit} y={y(celsius) + 4 * unit} textAnchor="end">
                {tick}
              </text>
            </g>
          )
        })}
        <text x={left - 6 * unit} y={11 * unit} textAnchor="end">
          {degreeSign(units)}
        </text>
        {product && (
          <rect
            className={styles.range}
            x={left}
            width={Math.max(0, width - left - 8)}
            y={yPercent(product.maxPercent)}
            height={yPercent(product.minPercent) - yPercent(product.maxPercent)}
          />
        )}
        {[0, 50, 100].map(percent => (
          <g key={percent}>
            <line
              className={styles.grid}
              x1={left}
              x2={width - 8}
              y1={yPercent(percent)}
              y2={yPercent(percent)}
            />
            <text x={left - 6 * unit} y={yPercent(percent) + 4 * unit} textAnchor="end">
              {percent} %
            </text>
          </g>
        ))}
        {timeTicks(fromAt, toAt, zone, width - left).map(at => (
          <g key={at}>
            <line className={styles.grid} x1={x(at)} x2={x(at)} y1={14 * unit} y2={foot} />
            <text x={x(at)} y={foot + 17 * unit} textAnchor="middle">
              {toAt - fromAt > 1440 && columnWords(dateOf(at, zone))} {clockWords(at, zone)}
            </text>
          </g>
        ))}
        <path className={styles.air} d={line(reading => reading.airC, y)} />
        <path className={styles.panel} d={line(reading => reading.panelC, y)} />
        <path className={styles.dew} d={line(reading => reading.dewC, y)} />
        <path className={styles.air} d={line(reading => reading.humidityPercent, yPercent)} />
      </svg>
      <div className={styles.legend} aria-hidden="true">
        <Key className={styles.air}>air, and humidity below</Key>
        <Key className={styles.panel}>panel</Key>
        <Key className={styles.dew}>dew point</Key>
        {product && (
          <span>
            <svg width="26" height="12" role="presentation">
              <rect className={styles.range} width="26" height="12" />
            </svg>
            {product.name}: temperature {product.temperatureSource}, humidity {product.humiditySource}
          </span>
        )}
      </div>
    </div>
  )
}

function Key({ className, children }: { className: string | undefined; children: string }) {
  return (
    <span>
      <svg width="26" height="10" role="presentation">
        <path className={className} d="M0 5H26" />
      </svg>
      {children}
    </span>
  )
}
