import type { IntakeView } from '../../../main/api/views.ts'
import { decimalNow, say } from '../../../main/domain/language/index.ts'
import { thicknessWords } from '../../../main/domain/measure/index.ts'
import pieces from '../../parts/pieces.module.css'
import styles from './Intake.module.css'

interface Props {
  gained: IntakeView['gained']
  units: 'us' | 'metric'
}

interface Line {
  label: string
  from: number
  to: number
  words: string
  /** What repeating the reading alone could make of it, either side of what was read before. */
  doubt: number
}

/** Panel by panel where a reading was and where it is; the band is what repeating it alone could make. */
export function GainChart({ gained: { gloss, thickness }, units }: Props) {
  const um = (value: number) => thicknessWords(value, units)
  const angles = [...Map.groupBy(gloss, each => each.geometryDeg)]
  return (
    <>
      {angles.map(([angle, lines]) => (
        <Lines
          key={angle}
          title={say('Gloss at {angle}°', { angle })}
          lines={lines.map(({ panel, beforeGu, afterGu, changeGu, limitGu, real }) => ({
            label: say(panel),
            from: beforeGu,
            to: afterGu,
            doubt: limitGu,
            words: say('{beforeGu} → {afterGu} GU, {real}', {
              beforeGu: beforeGu.toFixed(0),
              afterGu: afterGu.toFixed(0),
              real: real
                ? `${changeGu > 0 ? '+' : ''}${decimalNow(changeGu.toFixed(1))}`
                : say('no real change (under {limitGu})', { limitGu: decimalNow(limitGu.toFixed(1)) }),
            }),
          }))}
        />
      ))}
      {thickness.length > 0 && (
        <Lines
          title={say('Thickness, typical of each panel')}
          lines={thickness.map(({ panel, beforeUm, afterUm, changeUm, limitUm, real }) => ({
            label: say(panel),
            from: beforeUm,
            to: afterUm,
            doubt: limitUm,
            words: say('{before} → {after}, {real}', {
              before: um(beforeUm),
              after: um(afterUm),
              real: real
                ? `${changeUm > 0 ? '+' : '−'}${um(Math.abs(changeUm))}`
                : say('no real change (under {limitGu})', { limitGu: um(limitUm) }),
            }),
          }))}
        />
      )}
    </>
  )
}

const row = 34
const left = 150
const width = 760

function Lines({ title, lines }: { title: string; lines: readonly Line[] }) {
  const all = lines.flatMap(({ from, to, doubt }) => [from - doubt, from + doubt, to])
  const [low, high] = [Math.min(...all), Math.max(...all)]
  const x = (value: number) => left + 12 + ((value - low) / Math.max(high - low, 1)) * (width - left - 260)
  return (
    <figure>
      <figcaption className={pieces.soft}>{title}</figcaption>
      <svg
        className={styles.gain}
        viewBox={`0 0 ${width} ${lines.length * row}`}
        role="img"
        aria-label={`${title}: ${lines.map(({ label, words }) => `${label} ${words}`).join('; ')}`}
      >
        {lines.map(({ label, from, to, words, doubt }, i) => {
          const y = i * row + row / 2
          return (
            <g key={label} transform={`translate(0 ${y})`}>
              <text dy="0.35em">{label}</text>
              <rect
                className={styles.doubt}
                x={x(from - doubt)}
                y={-9}
                width={x(from + doubt) - x(from - doubt)}
                height={18}
              />
              <line x1={x(from)} x2={x(to)} />
              <circle className={styles.was} cx={x(from)} r={6} />
              <circle className={styles.is} cx={x(to)} r={7} />
              <text x={width - 236} dy="0.35em">
                {words}
              </text>
            </g>
          )
        })}
      </svg>
    </figure>
  )
}
