import { type KeyboardEvent, useRef, useState } from 'react'
import type { CarView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { Chart, Rule } from '../../parts/Chart.tsx'
import pieces from '../../parts/pieces.module.css'
import { dateWords, fullDateWords } from '../../parts/time.ts'
import styles from './CarLine.module.css'
import { type CarLineShape, type CarMoment, carLine, type Spot } from './carLine.ts'

/** A car's whole life on one line; each of its moments is told beneath by mouse, finger and arrow keys. */
export function CarLine({ car }: { car: CarView }) {
  const moments = momentsOf(car)
  const facts = { today: car.today, moments, layers: car.layers, life: car.life }
  // What stands together depends on the width, so the moments are kept and not the spot; at first it is what comes next.
  const next = moments.find(moment => moment.kind === 'coming') ?? moments.at(-1)
  const [chosen, setChosen] = useState<readonly string[] | null>(null)
  const told = moments.filter(moment => (chosen ? chosen.includes(keyOf(moment)) : moment === next))
  return (
    <div>
      <Chart
        label={say(
          '{plate} from {fromOn} to {toOn}: {moments, plural, one {1 moment} other {{moments} moments}}',
          {
            plate: car.plate || say('Car without a plate'),
            fromOn: fullDateWords(moments[0]?.on ?? car.today),
            toOn: fullDateWords(moments.at(-1)?.on ?? car.today),
            moments: moments.length,
          },
        )}
        shape={size => carLine(facts, size)}
        over={shape => <Spots shape={shape} told={told} onChoose={setChosen} />}
      >
        {(shape, { rem }) => <Line shape={shape} rem={rem} />}
      </Chart>
      <Told moments={told} words={chosen || !next ? null : nextWords(next)} />
    </div>
  )
}

/** What happened and what comes, oldest first. */
function momentsOf(car: CarView): CarMoment[] {
  const coming = car.plans.flatMap(({ next }) =>
    next
      ? [
          {
            on: next.dueOn,
            kind: 'coming' as const,
            words: say('{title} due {dueOn}', { title: next.title, dueOn: dateWords(next.dueOn) }),
          },
        ]
      : [],
  )
  return [...car.timeline, ...coming].sort((a, b) => a.on.localeCompare(b.on))
}

const keyOf = ({ on, kind, words }: CarMoment) => `${on} ${kind} ${words}`
const spotKey = (spot: Spot) => keyOf(spot.moments[0]!)

function Line({ shape, rem }: { shape: CarLineShape; rem: number }) {
  const todayRight = shape.todayX > shape.rightX - 5 * rem
  return (
    <g className={styles.line}>
      {shape.ticks.map(tick => (
        <g key={tick.label}>
          <Rule x={tick.x} from={shape.topY} to={shape.floorY} className={styles.year} />
          <text x={tick.x + 4} y={shape.floorY + 1.1 * rem}>
            {tick.label}
          </text>
        </g>
      ))}
      {shape.bands.map(band => (
        <g
          key={`${band.stage} ${band.fromX}`}
          className={band.stage === 'coat' ? styles.coat : styles.topper}
        >
          <path d={band.past} />
          {band.ahead && <path d={band.ahead} className={styles.ahead} />}
          {band.named && (
            <text x={band.fromX + 2} y={band.y - 0.4 * rem}>
              {band.words}
            </text>
          )}
        </g>
      ))}
      <Rule y={shape.spotY} from={shape.leftX} to={shape.rightX} className={styles.axis} />
      <Rule x={shape.todayX} from={shape.topY} to={shape.spotY + 0.6 * rem} className={styles.today} />
      <text
        x={shape.todayX + (todayRight ? -5 : 5)}
        y={shape.topY + 0.1 * rem}
        textAnchor={todayRight ? 'end' : 'start'}
        className={styles.todayWords}
      >
        {say('today')}
      </text>
      {shape.spots.map(spot => (
        <g key={spotKey(spot)}>
          <circle
            cx={spot.x}
            cy={shape.spotY}
            r={0.34 * rem}
            className={spot.coming ? styles.coming : styles.spot}
          />
          {spot.moments.length > 1 && (
            <text x={spot.x} y={shape.spotY - 0.7 * rem} textAnchor="middle">
              {spot.moments.length}
            </text>
          )}
          {spot.label && (
            <text
              x={spot.x + (spot.label.anchor === 'start' ? -0.3 : 0.3) * rem}
              y={shape.spotY + (1.4 + 1.2 * spot.label.row) * rem}
              textAnchor={spot.label.anchor}
            >
              {spot.label.words}
            </text>
          )}
        </g>
      ))}
    </g>
  )
}

interface SpotsProps {
  shape: CarLineShape
  told: readonly CarMoment[]
  onChoose(keys: readonly string[]): void
}

/** The spots as what can be pressed: one stop for the Tab key, the arrows go along the line. */
function Spots({ shape, told, onChoose }: SpotsProps) {
  const row = useRef<HTMLDivElement>(null)
  const { spots } = shape
  const held = spots.findIndex(spot => spot.moments.some(moment => told.includes(moment)))
  const stop = Math.max(0, held)
  const go = (event: KeyboardEvent) => {
    const to = { ArrowLeft: stop - 1, ArrowRight: stop + 1, Home: 0, End: spots.length - 1 }[event.key]
    if (to === undefined || event.ctrlKey || event.altKey || event.metaKey) return
    event.preventDefault()
    row.current?.querySelectorAll('button')[Math.min(spots.length - 1, Math.max(0, to))]?.focus()
  }
  return (
    <div
      ref={row}
      role="toolbar"
      aria-label={say('Moments of its life')}
      className={styles.spots}
      onKeyDown={go}
    >
      {spots.map((spot, i) => {
        const choose = () => onChoose(spot.moments.map(keyOf))
        return (
          <button
            key={spotKey(spot)}
            type="button"
            className={styles.press}
            style={{ left: spot.x, top: shape.spotY }}
            tabIndex={i === stop ? 0 : -1}
            aria-label={spot.moments.map(momentWords).join('; ')}
            aria-current={i === held || undefined}
            onClick={choose}
            onFocus={choose}
            onMouseEnter={choose}
          />
        )
      })}
    </div>
  )
}

const momentWords = ({ on, kind, words }: CarMoment) =>
  kind === 'coming' ? words : say('{on}: {words}', { on: fullDateWords(on), words })

const nextWords = (moment: CarMoment) =>
  moment.kind === 'coming'
    ? say('Next: {words}', { words: moment.words })
    : say('Last: {words}', { words: momentWords(moment) })

/** The moments that stand together on the chosen spot. */
function Told({ moments, words }: { moments: readonly CarMoment[]; words: string | null }) {
  return (
    <p className={`${pieces.soft} ${styles.told}`}>
      {moments.length === 0
        ? say('What is done to this car, and when it is due again, will stand on this line.')
        : (words ?? moments.map(momentWords).join(' · '))}
    </p>
  )
}
