import type { LifeView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { Chart, Rule } from '../../parts/Chart.tsx'
import { fullDateWords } from '../../parts/time.ts'
import styles from './LifeChart.module.css'
import { lifeShape } from './lifeShape.ts'

/** How long such a layer lasts: the curve, what was seen of others and this one, and how sure that is. */
export function LifeChart({ life, plate }: { life: LifeView; plate: string }) {
  const renewOn = fullDateWords(dayAfter(life.laidOn, life.renewDays))
  return (
    <Chart
      label={lifeWords(life, plate)}
      shape={size => lifeShape(life, size)}
      caption={
        <>
          <span className={styles.keyWorking}>{say('▲ still working')}</span>
          <span className={styles.keyGone}>{say('─□ gone, since it was last seen working')}</span>
          <span>
            <i className={styles.keyBand} /> {say('where the curve may lie')}
          </span>
          <span>
            <i className={styles.keyRange} />{' '}
            {say('where the renewal age may lie, {confidence} %', {
              confidence: Math.round(life.confidence * 100),
            })}
          </span>
        </>
      }
    >
      {(shape, size) => {
        const mark = 0.32 * size.rem
        const todayRight = (shape.todayX ?? 0) > size.width * 0.85
        const labelRight = shape.renewX > size.width * 0.65
        return (
          <>
            <path d={shape.band} className={styles.band} />
            {shape.levels.map(level => (
              <text key={level.label} x={shape.leftX - 6} y={level.y + 4} textAnchor="end">
                {level.label}
              </text>
            ))}
            <Rule y={shape.levelY} from={shape.leftX} to={shape.renewX} className={styles.level} />
            <path d={shape.curve} className={styles.curve} />
            <Rule
              y={shape.floorY - 5}
              from={shape.range.fromX}
              to={shape.range.toX}
              className={styles.range}
            />
            <Rule x={shape.renewX} from={shape.levelY} to={shape.floorY} className={styles.renew} />
            <text
              x={shape.renewX + (labelRight ? -6 : 6)}
              y={shape.floorY - 0.9 * size.rem}
              textAnchor={labelRight ? 'end' : 'start'}
              className={styles.renewWords}
            >
              {say('{level} % until {renewOn}', { level: Math.round(life.level * 100), renewOn })}
            </text>
            {shape.todayX !== null && (
              <>
                <Rule x={shape.todayX} from={shape.topY} to={shape.floorY} className={styles.today} />
                <text
                  x={shape.todayX + (todayRight ? -5 : 5)}
                  y={shape.topY + 3.6 * size.rem}
                  textAnchor={todayRight ? 'end' : 'start'}
                  className={styles.todayWords}
                >
                  {say('today')}
                </text>
              </>
            )}
            {shape.marks.map(each => (
              <g key={each.key} className={each.working ? styles.working : styles.gone}>
                {each.fromX !== null && <line x1={each.fromX} x2={each.x} y1={each.y} y2={each.y} />}
                {each.working ? (
                  <path
                    d={`M${each.x - mark} ${each.y + mark}L${each.x} ${each.y - mark}L${each.x + mark} ${each.y + mark}Z`}
                  />
                ) : (
                  <rect x={each.x - mark} y={each.y - mark} width={2 * mark} height={2 * mark} />
                )}
                {each.count > 1 && (
                  <text x={each.x + mark + 2} y={each.y + 4}>
                    ×{each.count}
                  </text>
                )}
              </g>
            ))}
            <Rule y={shape.floorY} from={shape.leftX} to={shape.rightX} className={styles.axis} />
            {shape.months.map(month => (
              <text key={month.label} x={month.x} y={shape.floorY + 1.1 * size.rem} textAnchor="middle">
                {month.label}
              </text>
            ))}
            <text x={shape.rightX} y={shape.floorY + 2.4 * size.rem} textAnchor="end">
              {say('months since it was laid')}
            </text>
          </>
        )
      }}
    </Chart>
  )
}

function dayAfter(on: string, days: number): string {
  return Temporal.PlainDate.from(on).add({ days }).toString()
}

/** The picture for those who cannot see it. */
function lifeWords(life: LifeView, plate: string): string {
  const working = life.readings.filter(reading => reading.to === null)
  const gone = life.readings.filter(reading => reading.to !== null)
  const seen = (readings: readonly { count?: number }[]) =>
    readings.reduce((total, reading) => total + (reading.count ?? 1), 0)
  const { productName, renewDays, lowDays, highDays, ageDays } = life
  const values = { productName, plate, level: Math.round(life.level * 100), renewDays, lowDays }
  return [
    highDays === null
      ? say(
          'How long {productName} lasts on cars like {plate}: {level} % still work after {renewDays} days (at least {lowDays}, no upper end known).',
          values,
        )
      : say(
          'How long {productName} lasts on cars like {plate}: {level} % still work after {renewDays} days (at least {lowDays}, at most {highDays}).',
          { ...values, highDays },
        ),
    say('Seen still working: {working}, gone: {gone}. This one was laid {ageDays} days ago.', {
      working: seen(working),
      gone: seen(gone),
      ageDays,
    }),
  ].join(' ')
}
