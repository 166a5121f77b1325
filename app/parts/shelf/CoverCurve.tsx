import type { AdviceFacts, ShelfUnit } from '../../../main/api/views.ts'
import { decimalNow, say } from '../../../main/domain/language/index.ts'
import { amountText } from '../../../main/domain/shelf/index.ts'
import { Drawing, Level, Rule } from '../Chart.tsx'
import styles from './shelf.module.css'

const box = { width: 380, height: 176, left: 44, right: 14, top: 14, bottom: 40 }

interface Props {
  facts: Pick<AdviceFacts, 'within' | 'position' | 'orderPoint' | 'service'>
  unit: ShelfUnit
}

/** The chance that unforeseen use until the next delivery stays under an amount, with what is left and the order point. */
export function CoverCurve({ facts, unit }: Props) {
  const { within, position, orderPoint, service } = facts
  const most = Math.max(...within.map(point => point.amount), position, orderPoint, 1)
  const floor = box.height - box.bottom
  const x = (amount: number) =>
    box.left + (Math.min(most, Math.max(0, amount)) / most) * (box.width - box.left - box.right)
  const y = (share: number) => floor - share * (floor - box.top)
  const percent = (share: number) => `${decimalNow(Math.round(share * 1000) / 10)} %`
  const line = within.map(point => `${x(point.amount).toFixed(1)} ${y(point.share).toFixed(1)}`)
  const points = [
    { label: say('order point'), amount: orderPoint, className: styles.orderPoint },
    { label: say('left||on the shelf'), amount: position, className: styles.position },
  ]
  const words = points.map(point => `${point.label} ${amountText(point.amount, unit)}`).join(', ')
  return (
    <Drawing
      box={box}
      className={styles.figure}
      label={say(
        'Chance that unforeseen use until the next delivery stays under an amount: {words}, target {service}',
        { words, service: percent(service) },
      )}
      caption={say(
        'chance that unforeseen use until the next delivery stays under an amount; the line across is the service level aimed at',
      )}
    >
      {[0, service, 1].map(share => (
        <Level
          key={share}
          label={share === 1 && service > 0.9 ? '' : percent(share)}
          x={box.left}
          to={box.width - box.right}
          y={y(share)}
          className={share === service ? styles.target : styles.level}
        />
      ))}
      <path d={`M${line.join('L')}`} className={styles.likely} />
      {points.map((point, i) => (
        <g key={point.label}>
          <Rule x={x(point.amount)} from={box.top} to={floor} className={point.className} />
          <text
            x={Math.min(x(point.amount), box.width - 120)}
            y={floor + 15 + 14 * i}
            className={styles.named}
          >
            {i === 0 ? '┆' : '│'} {point.label} {amountText(point.amount, unit)}
          </text>
        </g>
      ))}
    </Drawing>
  )
}
