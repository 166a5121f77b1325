import type { CureMarks, JobView } from '../../../main/api/views.ts'
import { type CureProfile, cureCurve } from '../../../main/domain/cure/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useShop } from '../../data/shop.ts'
import { Card } from '../../parts/Card.tsx'
import { Chart, Rule } from '../../parts/Chart.tsx'
import { cureAge } from '../../parts/cureAge.ts'
import { degrees } from '../../parts/degrees.ts'
import { Facts } from '../../parts/Facts.tsx'
import pieces from '../../parts/pieces.module.css'
import { durationWords, nearWords } from '../../parts/time.ts'
import { diamond, triangle } from '../board/layers/Blocks.tsx'
import styles from './Job.module.css'
import { PartsBar } from './PartsBar.tsx'
import { passedWords } from './passedWords.ts'

/** The coats of a job, each once, in order; the last one rules when the car may leave. */
function coatsOf(job: JobView): Coat[] {
  const coats = new Map<number, Coat>()
  for (const step of job.steps) {
    const profile = step.productId ? job.profiles[step.productId] : undefined
    if (step.cure && profile) coats.set(step.cure.coatEndAt, { marks: step.cure, profile })
  }
  return [...coats.values()]
}

/** The running clock, where something cures: the milestones the newest coat has passed, its curve as a picture, and from when what may be done. */
export function CureClock({ job }: { job: JobView }) {
  const coats = coatsOf(job)
  const laid = coats.filter(coat => coat.marks.actual)
  const coat = laid.at(-1) ?? coats.at(-1)
  if (!coat) return null
  return (
    <Card className={styles.card} title={say('Cure clock')}>
      <Clock job={job} coat={coat} />
    </Card>
  )
}

const usualWords = {
  set: say('as set for the bay'),
  'last week': say('the middle of the bay’s last week'),
  profile: say('the profile’s own, for want of readings'),
} as const

interface Coat {
  marks: CureMarks
  profile: CureProfile
}

/** The curve of a coat along its clock, and from where what may be done. */
function Curve({ marks, profile, nowAt }: Coat & { nowAt: number | null }) {
  const { degreeAt } = cureCurve(profile)
  const ageAt = cureAge(marks)
  const spanMin = Math.max((marks.advisedAt - marks.coatEndAt) * 1.4, 24 * 60)
  const floor = 150
  const y = (degree: number) => floor - degree * (floor - 12)
  const samples = Array.from({ length: 61 }, (_, i) => marks.coatEndAt + (spanMin * i) / 60)
  return (
    <Chart
      label={say('Cure of {productName} over time, drawn between the figures of its profile', {
        productName: marks.productName,
      })}
      shape={({ width }) => {
        const x = (at: number) => ((at - marks.coatEndAt) / spanMin) * width
        const line = (of: 'early' | 'likely' | 'late') =>
          samples.map(at => `${x(at).toFixed(1)} ${y(degreeAt(ageAt(at))[of]).toFixed(1)}`)
        return { height: floor + 22, x, line }
      }}
    >
      {({ x, line }, { width }) => (
        <>
          <path
            className={styles.band}
            d={`M${line('early').join('L')}L${line('late').reverse().join('L')}Z`}
          />
          <path className={styles.curve} d={`M${line('likely').join('L')}`} />
          <Rule className={styles.floor} y={floor} from={0} to={width} />
          <path className={styles.mark} d={triangle(x(marks.tackFreeAt), floor + 10, 4)} />
          {marks.topperAt !== null && (
            <path className={styles.mark} d={diamond(x(marks.topperAt), floor + 10, 4.6)} />
          )}
          <circle className={styles.mark} cx={x(marks.safeAt)} cy={floor + 10} r={4} />
          {nowAt !== null && x(nowAt) < width && (
            <Rule className={styles.now} x={x(nowAt)} from={0} to={floor} />
          )}
        </>
      )}
    </Chart>
  )
}

function Clock({ job, coat }: { job: JobView; coat: Coat }) {
  const { marks, profile } = coat
  const { units } = useShop()
  const age = cureAge(marks)(job.nowAt)
  const when = (at: number | null) => (at === null ? '—' : nearWords(at, job.zone, job.nowAt))
  const reached = (at: number) =>
    at <= job.nowAt ? (
      <span className={pieces.kept}>{say('✓ since {at}', { at: when(at) })}</span>
    ) : (
      say('from {at}', { at: when(at) })
    )
  const running = marks.actual && job.nowAt >= marks.coatEndAt
  const { clock } = marks
  const of = { productName: marks.productName, at: when(marks.coatEndAt) }
  return (
    <div>
      <p className={pieces.soft}>
        {marks.actual
          ? say('{productName}, finished {at}.', of)
          : say('{productName}, planned for {at}.', of)}{' '}
        {running
          ? say('Cure age {age} at {referenceC}. {marks}', {
              age: durationWords(Math.floor(age)),
              referenceC: degrees(profile.referenceC, units),
              marks: passedWords(marks, job.nowAt, when),
            })
          : say('The clock starts when the coat is finished.')}
      </p>
      <Curve {...coat} nowAt={running ? job.nowAt : null} />
      {clock && (
        <>
          <PartsBar until={clock.untilSafe} />
          <p className={pieces.soft}>
            {say('Until the earliest handover; what is still to come at {usualC}, {usualWords}.', {
              usualC: degrees(clock.usualC, units),
              usualWords: usualWords[clock.usualFrom],
            })}
            {clock.heated && ` ${say('A heated cure is recorded.')}`}
            {clock.stalled && ` ${say('⚠ In this cold some moments below are never reached: warm the bay.')}`}
          </p>
        </>
      )}
      <Facts
        of={{
          [say('▲ Safe to touch')]: reached(marks.tackFreeAt),
          [say('Next layer')]:
            marks.recoatOpensAt !== null &&
            say('{recoatOpensAt} to {recoatClosesAt}', {
              recoatOpensAt: when(marks.recoatOpensAt),
              recoatClosesAt: when(marks.recoatClosesAt),
            }),
          [say('◆ Topper')]: marks.topperAt !== null && reached(marks.topperAt),
          [say('● Earliest pick-up')]: reached(marks.safeAt),
          [say('Recommended pick-up')]: when(marks.advisedAt),
          [say('Keep dry until')]: when(marks.keepDryEndsAt),
          [say('First wash from')]: when(marks.firstWashAt),
          [say('Full cure by')]: when(marks.fullCureAt),
        }}
      />
    </div>
  )
}
