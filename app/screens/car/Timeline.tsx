import { Button } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import type { CarView, TimelineEntry } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { faultsOf } from '../../parts/faults.ts'
import { fullDateWords } from '../../parts/time.ts'
import styles from '../upkeep/Upkeep.module.css'
import type { Acts } from '../upkeep/useActs.tsx'
import own from './Timeline.module.css'

const signs: Record<TimelineEntry['kind'], string> = {
  coat: '◆',
  topper: '◇',
  job: '■',
  visit: '✓',
  skipped: '–',
  moved: '→',
  inspection: '◉',
  away: '…',
  sold: '✕',
  reminder: '✉',
}

/** What comes, then everything that was, newest first. */
export function Timeline({ car, acts }: { car: CarView; acts: Acts }) {
  const undoing = useSaving(trpc.upkeep.undo.mutationOptions())
  const voiding = useSaving(trpc.upkeep.voidInspection.mutationOptions())
  const words = faultsOf(undoing.error ?? voiding.error).rest()
  const takeBack = ({ actId, inspectionId, words }: TimelineEntry) => {
    const done = () => acts.undone(words)
    if (inspectionId !== null) voiding.save({ id: inspectionId }, done)
    else if (actId !== null) undoing.save({ actId }, done)
  }
  const coming = car.plans
    .flatMap(plan => (plan.next ? [plan.next] : []))
    .sort((a, b) => (a.dueOn < b.dueOn ? 1 : -1))
  return (
    <section className={styles.card} aria-labelledby="timeline">
      <h2 id="timeline">Its life</h2>
      {words && <p className={styles.late}>{words}</p>}
      <ol className={own.line}>
        {coming.map(visit => (
          <li key={visit.key} data-coming="true">
            <span className={own.on}>{fullDateWords(visit.dueOn)}</span>
            <span className={own.sign} aria-hidden="true">
              ○
            </span>
            <span>
              {visit.title} <small>to come</small>
            </span>
          </li>
        ))}
        <li className={own.today}>
          <span className={own.on}>{fullDateWords(car.today)}</span>
          <span className={own.sign} aria-hidden="true">
            │
          </span>
          <span>today</span>
        </li>
        {car.timeline.map((entry, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two equal lines of one day differ by nothing but their place.
          <li key={`${entry.on} ${entry.kind} ${i}`}>
            <span className={own.on}>{fullDateWords(entry.on)}</span>
            <span className={own.sign} aria-hidden="true">
              {signs[entry.kind]}
            </span>
            <span>
              {entry.words}{' '}
              {entry.jobId !== null && (
                <Link to="/jobs/$id" params={{ id: entry.jobId }} aria-label={`The job: ${entry.words}`}>
                  job
                </Link>
              )}
            </span>
            {(entry.actId ?? entry.inspectionId) !== null && (
              <Button
                variant="subtle"
                size="compact-xs"
                aria-label={`Take back: ${entry.words}`}
                onClick={() => takeBack(entry)}
              >
                Take back
              </Button>
            )}
          </li>
        ))}
      </ol>
      {car.timeline.length === 0 && <p className={styles.soft}>Nothing has happened to this car here yet.</p>}
    </section>
  )
}
