import { Button, Checkbox, Group } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { CarChangeView, LaidView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { listWords } from '../../../../main/domain/words.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { durationWords, longWords } from '../../../parts/time.ts'
import { inTurn } from '../inTurn.ts'
import styles from './Relay.module.css'

interface Props {
  run: LaidView
  zone: string
  busy: boolean
  accept(jobIds: string[]): void
  leave(): void
}

/** The difference to the present plan, a row a car; those ticked are accepted, and what they need goes with them. */
export function ChangeList({ run, zone, busy, accept, leave }: Props) {
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const { changes } = run
  const chosen = changes.filter(change => !left.has(change.jobId))
  const tick = (change: CarChangeView, on: boolean) =>
    setLeft(before => {
      const now = new Set(before)
      if (on) for (const id of [change.jobId, ...change.with]) now.delete(id)
      else
        for (const other of changes)
          if (other.jobId === change.jobId || other.with.includes(change.jobId)) now.add(other.jobId)
      return now
    })
  const pinning = useSaving(trpc.dayPlan.pin.mutationOptions())
  const plates = new Map(changes.map(change => [change.jobId, change.plate]))
  return (
    <section className={pieces.divided} aria-label={say('What would change')}>
      {changes.map(change => (
        <div key={change.jobId} className={styles.row}>
          <Checkbox
            checked={!left.has(change.jobId)}
            onChange={event => tick(change, event.currentTarget.checked)}
            aria-label={say('Accept {plate}', { plate: change.plate })}
          />
          <div>
            <Link to="/jobs/$id" params={{ id: change.jobId }} className={styles.plate}>
              {change.plate}
            </Link>
            <small>
              {change.customerName}
              {change.with.length > 0 &&
                say(', together with {with}', { with: change.with.map(id => plates.get(id)).join(', ') })}
            </small>
          </div>
          <dl className={styles.places}>
            {change.from && (
              <>
                <dt>{say('Now')}</dt>
                <dd>{placeWords(change.from, zone)}</dd>
              </>
            )}
            <dt>{say('Better')}</dt>
            <dd>{placeWords(change.to, zone)}</dd>
          </dl>
          <ul className={styles.gains} aria-label={say('What it gains')}>
            {gains(change).map(({ words, worse }) => (
              <li key={words} className={worse ? pieces.late : pieces.kept}>
                {worse ? '⚑' : '✓'} {words}
              </li>
            ))}
            {!change.sameTimes && (
              <li>{say('Tell {customerName}', { customerName: change.customerName })}</li>
            )}
            <li>
              <Button
                variant="default"
                size="compact-sm"
                aria-label={say('Pin it where it is: {plate}', { plate: change.plate })}
                disabled={left.has(change.jobId)}
                onClick={() => {
                  if (change.version === null) return
                  pinning.save({ id: change.jobId, version: change.version, pinned: true })
                  tick(change, false)
                }}
              >
                {say('Pin it where it is')}
              </Button>
            </li>
          </ul>
        </div>
      ))}
      <Refused of={pinning.error} />
      <Group className={styles.acts}>
        <Button
          disabled={chosen.length === 0 || run.working}
          loading={busy}
          onClick={() => accept(chosen.map(change => change.jobId))}
        >
          {chosen.length === changes.length
            ? say('Accept {changes, plural, one {it} other {all {changes}}}', { changes: changes.length })
            : say('Accept {chosen} of {changes}', { chosen: chosen.length, changes: changes.length })}
        </Button>
        <Button variant="default" onClick={leave}>
          {say('Leave it as it is')}
        </Button>
      </Group>
    </section>
  )
}

function placeWords({ dropOffAt, handoverAt, bays, people }: CarChangeView['to'], zone: string): string {
  const who = people.length > 0 ? `, ${listWords(people)}` : ''
  return say('{dropOffAt} to {handoverAt}, {bays}{who}', {
    dropOffAt: longWords(dropOffAt, zone),
    handoverAt: longWords(handoverAt, zone),
    bays: inTurn(bays),
    who,
  })
}

/** What becomes better or worse for one car; a car that only makes room says so. */
function gains({ was, becomes }: CarChangeView): { words: string; worse: boolean }[] {
  if (!was) return []
  const found: { words: string; worse: boolean }[] = []
  const weigh = (less: number, words: (amount: number) => string, more: (amount: number) => string) => {
    if (less > 0) found.push({ words: words(less), worse: false })
    if (less < 0) found.push({ words: more(-less), worse: true })
  }
  weigh(
    was.lateMin - becomes.lateMin,
    min => say('{min} less late', { min: durationWords(min) }),
    min => say('{min} later than promised', { min: durationWords(min) }),
  )
  weigh(
    was.blockedMin - becomes.blockedMin,
    min => say('Bay blocked {min} less', { min: durationWords(min) }),
    min => say('Bay blocked {min} more', { min: durationWords(min) }),
  )
  weigh(
    was.moves - becomes.moves,
    moves => say('{moves, plural, one {1 move} other {{moves} moves}} less', { moves }),
    moves => say('{moves, plural, one {1 move} other {{moves} moves}} more', { moves }),
  )
  return found.length > 0 ? found : [{ words: say('Makes room for another'), worse: false }]
}
