import type { ConditionsView, ReadingView } from '../../../main/api/views.ts'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { say, sayKept } from '../../../main/domain/language/index.ts'
import { useShop } from '../../data/shop.ts'
import { Chart, type ChartSize, Level, Rule } from '../../parts/Chart.tsx'
import { celsiusTyped, degreeSign, degreesShown } from '../../parts/degrees.ts'
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

/** Where everything lies: degrees above, humidity below, time along the foot of both. */
function layOut({ readings, fromAt, toAt, product }: Props, { width, rem }: ChartSize) {
  const unit = rem / 16
  const left = 46 * unit
  const right = width - 8
  const floor = 210 * unit
  const foot = floor + 90 * unit
  const values = readings.flatMap(({ airC, panelC, dewC }) => [airC, panelC ?? airC, dewC ?? airC])
  const range = product ? [product.minC, product.maxC] : []
  const least = Math.min(...values, ...range, 10) - 2
  const most = Math.max(...values, ...range, 25) + 2
  const x = (at: number) => left + ((at - fromAt) / (toAt - fromAt)) * Math.max(0, right - left)
  const y = (celsius: number) => floor - ((celsius - least) / (most - least)) * (floor - 14 * unit)
  const yPercent = (percent: number) => foot - (percent / 100) * 70 * unit
  const line = (of: (reading: ReadingView) => number | null, scale: (value: number) => number) =>
    linePath(
      readings.flatMap((reading): Point[] => {
        const value = of(reading)
        return value === null ? [] : [{ at: reading.at, x: x(reading.at), y: scale(value) }]
      }),
      Math.max(90, (toAt - fromAt) / 100),
    )
  return { height: foot + 24 * unit, unit, left, right, foot, least, most, x, y, yPercent, line }
}

/** Air, panel and dew point over time with the range a product's profile gives; the humidity below. */
export function ReadingsChart(props: Props) {
  const { fromAt, toAt, zone, product } = props
  const { units } = useShop()
  return (
    <Chart
      label={say('Air, panel and dew point of the bay, {fromAt} to {toAt}', {
        fromAt: longWords(fromAt, zone),
        toAt: longWords(toAt, zone),
      })}
      shape={size => layOut(props, size)}
      caption={
        <>
          <Key className={styles.air}>{say('air, and humidity below')}</Key>
          <Key className={styles.panel}>{say('panel')}</Key>
          <Key className={styles.dew}>{say('dew point')}</Key>
          {product && (
            <span>
              <i className={styles.rangeKey} />
              {say('{name}: temperature {temperatureSource}, humidity {humiditySource}', {
                name: product.name,
                temperatureSource: sayKept(product.temperatureSource),
                humiditySource: sayKept(product.humiditySource),
              })}
            </span>
          )}
        </>
      }
    >
      {({ unit, left, right, foot, least, most, x, y, yPercent, line }) => {
        const range = (from: number, to: number) => (
          <rect
            className={styles.range}
            x={left}
            width={Math.max(0, right - left)}
            y={to}
            height={from - to}
          />
        )
        const level = (label: string | number, at: number) => (
          <Level key={label} label={label} x={left} to={right} y={at} className={styles.grid} />
        )
        return (
          <>
            {product && range(y(product.minC), y(product.maxC))}
            {product && range(yPercent(product.minPercent), yPercent(product.maxPercent))}
            {degreeTicks(degreesShown(least, units), degreesShown(most, units)).map(tick =>
              level(tick, y(celsiusTyped(tick, units))),
            )}
            <text x={left - 6 * unit} y={11 * unit} textAnchor="end">
              {degreeSign(units)}
            </text>
            {[0, 50, 100].map(percent => level(`${percent} %`, yPercent(percent)))}
            {timeTicks(fromAt, toAt, zone, right + 8 - left).map(at => (
              <g key={at}>
                <Rule x={x(at)} from={14 * unit} to={foot} className={styles.grid} />
                <text x={x(at)} y={foot + 17 * unit} textAnchor="middle">
                  {toAt - fromAt > 1440 && columnWords(dateOf(at, zone))} {clockWords(at, zone)}
                </text>
              </g>
            ))}
            <path className={styles.air} d={line(reading => reading.airC, y)} />
            <path className={styles.panel} d={line(reading => reading.panelC, y)} />
            <path className={styles.dew} d={line(reading => reading.dewC, y)} />
            <path className={styles.air} d={line(reading => reading.humidityPercent, yPercent)} />
          </>
        )
      }}
    </Chart>
  )
}

function Key({ className, children }: { className: string | undefined; children: string }) {
  return (
    <span>
      <svg width="26" height="10" role="presentation">
        <path className={className} d="M0 5H26" />
      </svg>{' '}
      {children}
    </span>
  )
}
