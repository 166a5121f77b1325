import { useElementSize } from '@mantine/hooks'
import type { CureMarks, JobView } from '../../../main/api/views.ts'
import { type CureProfile, cureCurve } from '../../../main/domain/cure/index.ts'
import { useShop } from '../../data/shop.ts'
import { cureAge } from '../../parts/cureAge.ts'
import { degrees } from '../../parts/degrees.ts'
import { durationWords, nearWords } from '../../parts/time.ts'
import { diamond, triangle } from '../board/layers/Blocks.tsx'
import styles from './Job.module.css'
import { PartsBar } from './PartsBar.tsx'

/** The coats of a job, each once, in order; the last one rules when the car may leave. */
function coatsOf(job: JobView): { marks: CureMarks; profile: CureProfile }[] {
  const coats = new Map<number, { marks: CureMarks; profile: CureProfile }>()
  for (const step of job.steps) {
    const profile = step.productId ? job.profiles[step.productId] : undefined
    if (step.cure && profile) coats.set(step.cure.coatEndAt, { marks: step.cure, profile })
  }
  return [...coats.values()]
}

/** The running clock: how far the newest coat has cured, as a band, and from when what may be done. */
export function CureClock({ job }: { job: JobView }) {
  const coats = coatsOf(job)
  const laid = coats.filter(coat => coat.marks.actual)
  const coat = laid.at(-1) ?? coats.at(-1)
  return (
    <section className={styles.card}>
      <h2>Cure clock</h2>
      {coat ? (
        <Clock job={job} coat={coat} />
      ) : (
        <p className={styles.soft}>Nothing in this job cures: the car may go home when the work is done.</p>
      )}
    </section>
  )
}

const usualWords = {
  set: 'as set for the bay',
  'last week': 'the middle of the bay’s last week',
  profile: 'the profile’s own, for want of readings',
} as const

function Clock({ job, coat }: { job: JobView; coat: { marks: CureMarks; profile: CureProfile } }) {
  const { ref, width } = useElementSize()
  const { marks, profile } = coat
  const { degreeAt } = cureCurve(profile)
  const { units } = useShop()
  const ageAt = cureAge(marks)
  const spanMin = Math.max((marks.advisedAt - marks.coatEndAt) * 1.4, 24 * 60)
  const height = 150
  const x = (at: number) => ((at - marks.coatEndAt) / spanMin) * width
  const y = (degree: number) => height - degree * (height - 12)
  const samples = Array.from({ length: 61 }, (_, i) => (spanMin * i) / 60)
  const line = (of: 'early' | 'likely' | 'late') =>
    samples.map(min => {
      const at = marks.coatEndAt + min
      return `${x(at).toFixed(1)} ${y(degreeAt(ageAt(at))[of]).toFixed(1)}`
    })
  const age = ageAt(job.nowAt)
  const degree = degreeAt(age)
  const percent = (value: number) => `${Math.round(value * 100)} %`
  const when = (at: number | null) => {
    if (at === null) return '—'
    return nearWords(at, job.zone, job.nowAt)
  }
  const running = marks.actual && job.nowAt >= marks.coatEndAt
  const { clock } = marks
  return (
    <div>
      <p className={styles.soft}>
        {marks.productName}, {marks.actual ? 'finished' : 'planned for'} {when(marks.coatEndAt)}.{' '}
        {running
          ? `Cure age ${durationWords(Math.floor(age))} at ${degrees(profile.referenceC, units)}, about ${percent(degree.likely)} cured (${percent(degree.late)} to ${percent(degree.early)}).`
          : 'The clock starts when the coat is finished.'}
      </p>
      <div ref={ref}>
        <svg
          width={width}
          height={height + 22}
          role="img"
          aria-label={`Cure of ${marks.productName} over time`}
        >
          <path
            className={styles.band}
            d={`M${line('early').join('L')}L${line('late').reverse().join('L')}Z`}
          />
          <path className={styles.curve} d={`M${line('likely').join('L')}`} />
          <line className={styles.floor} x1={0} x2={width} y1={height} y2={height} />
          <path className={styles.mark} d={triangle(x(marks.tackFreeAt), height + 10, 4)} />
          {marks.topperAt !== null && (
            <path className={styles.mark} d={diamond(x(marks.topperAt), height + 10, 4.6)} />
          )}
          <circle className={styles.mark} cx={x(marks.safeAt)} cy={height + 10} r={4} />
          {running && x(job.nowAt) < width && (
            <line className={styles.now} x1={x(job.nowAt)} x2={x(job.nowAt)} y1={0} y2={height} />
          )}
        </svg>
      </div>
      {clock && (
        <>
          <PartsBar until={clock.untilSafe} />
          <p className={styles.soft}>
            Until the earliest handover; what is still to come at {degrees(clock.usualC, units)},{' '}
            {usualWords[clock.usualFrom]}.{clock.heated && ' A heated cure is recorded.'}
            {clock.stalled && ' ⚠ In this cold some moments below are never reached: warm the bay.'}
          </p>
        </>
      )}
      <dl>
        <Row mark="▲" name="May be touched, moved" at={marks.tackFreeAt} now={job.nowAt} words={when} />
        {marks.recoatOpensAt !== null && (
          <>
            <dt>Next layer</dt>
            <dd>
              {when(marks.recoatOpensAt)} to {when(marks.recoatClosesAt)}
            </dd>
          </>
        )}
        {marks.topperAt !== null && (
          <Row mark="◆" name="Topper at the least" at={marks.topperAt} now={job.nowAt} words={when} />
        )}
        <Row mark="●" name="May leave at the least" at={marks.safeAt} now={job.nowAt} words={when} />
        <dt>Advised</dt>
        <dd>{when(marks.advisedAt)}</dd>
        <dt>Keep dry until</dt>
        <dd>{when(marks.keepDryEndsAt)}</dd>
        <dt>First wash from</dt>
        <dd>{when(marks.firstWashAt)}</dd>
        <dt>Full cure by</dt>
        <dd>{when(marks.fullCureAt)}</dd>
      </dl>
    </div>
  )
}

function Row(props: { mark: string; name: string; at: number; now: number; words(at: number): string }) {
  const reached = props.at <= props.now
  return (
    <>
      <dt>
        {props.mark} {props.name}
      </dt>
      <dd className={reached ? styles.kept : undefined}>
        {reached ? '✓ since ' : 'from '}
        {props.words(props.at)}
      </dd>
    </>
  )
}
