import { useState } from 'react'
import type { CureProfile } from '../../../../main/domain/cure/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { degreesWords } from '../../../../main/domain/measure/index.ts'
import { useShop } from '../../../data/shop.ts'
import { Drawing, Level, Rule } from '../../../parts/Chart.tsx'
import { durationText } from '../../../parts/durationText.ts'
import { Grip } from '../../../parts/Grip.tsx'
import pieces from '../../../parts/pieces.module.css'
import { minutesOf, movedPoint, type Point, reachOf, sensible, stepped } from './bandDrag.ts'
import { axisFor, axisOf, type BandAxis, bandShape, box, rail } from './bandShape.ts'
import styles from './Products.module.css'

const names: Readonly<Record<Point, string>> = {
  tackFreeMin: say('Tack-free'),
  handoverMin: say('Earliest pick-up'),
  handoverAdvisedMin: say('Recommended pick-up'),
  'firstPeriod.earlyMin': say('First period, early bound'),
  'firstPeriod.lateMin': say('First period, late bound'),
  'fullCure.earlyMin': say('Full cure, early bound'),
  'fullCure.lateMin': say('Full cure, late bound'),
}

interface Props {
  profile: CureProfile
  onChange(profile: CureProfile): void
}

/**
 * How a coat hardens over the days after it was laid: the likely curve between its early and its late bound. Its points
 * are dragged along time.
 */
export function CureBand({ profile, onChange }: Props) {
  const { units } = useShop()
  /** What is held stays under the hand: the axis changes only when it is let go. */
  const [held, setHeld] = useState<BandAxis | null>(null)
  const axis = held ?? axisFor(profile)
  const shape = bandShape(profile, axis)
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
      over={
        <div className={styles.grips}>
          {shape.grips.map(({ point, x, y }) => {
            const now = minutesOf(profile, point)
            const to = (minutes: number) => onChange(movedPoint(profile, point, minutes))
            return (
              <Grip
                key={point}
                label={names[point]}
                now={now}
                {...reachOf(profile, point)}
                text={durationText(now)}
                at={(x - box.left) / (box.width - box.left - box.right)}
                down={y / box.height}
                className={styles.grip}
                onHold={on => setHeld(on ? axis : null)}
                onDrag={share => to(sensible(axisOf(axis).at(share)))}
                onStep={by => to(stepped(now, by))}
              >
                {shape.marks.find(mark => mark.point === point)?.sign}
              </Grip>
            )
          })}
        </div>
      }
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
          <text x={x} y={floor + 42} textAnchor={x > box.width - 40 ? 'end' : 'middle'}>
            {label}
          </text>
        </g>
      ))}
      {shape.marks.map(mark =>
        mark.point ? (
          <g key={mark.sign}>
            <Rule x={mark.x} from={mark.y} to={rail} className={styles.stem} />
            <circle cx={mark.x} cy={mark.y} r={2.5} className={styles.foot} />
          </g>
        ) : (
          <text key={mark.sign} x={mark.x} y={mark.y + 5} textAnchor="middle" className={styles.mark}>
            {mark.sign}
          </text>
        ),
      )}
      <text x={box.left} y={box.height - 6}>
        {say('time after the coat, at {referenceC}', {
          referenceC: degreesWords(profile.referenceC, units),
        })}
      </text>
    </Drawing>
  )
}
