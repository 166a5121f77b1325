import { Link } from '@tanstack/react-router'
import type { ReactNode } from 'react'
import type { CarView, TimelineEntry } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { fullDateWords } from '../../parts/time.ts'
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
  hands: '⇄',
  reminder: '✉',
}

/** Everything that was, newest first, with its way back. */
export function Timeline({ car, acts }: { car: CarView; acts: Acts }) {
  const undoing = useSaving(trpc.upkeep.undo.mutationOptions())
  const voiding = useSaving(trpc.upkeep.voidInspection.mutationOptions())
  const takeBack = ({ actId, inspectionId, words }: TimelineEntry) => {
    const done = () => acts.undone(words)
    if (inspectionId !== null) voiding.save({ id: inspectionId }, done)
    else if (actId !== null) undoing.save({ actId }, done)
  }
  return (
    <Card title={say('What happened')}>
      <Refused of={undoing.error ?? voiding.error} />
      <ol className={own.line}>
        {car.timeline.map((entry, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two equal lines of one day differ by nothing but their place.
          <Moment key={`${entry.on} ${entry.kind} ${i}`} on={entry.on} sign={signs[entry.kind]}>
            <span>
              {entry.words}{' '}
              {entry.jobId !== null && (
                <Link
                  to="/jobs/$id"
                  params={{ id: entry.jobId }}
                  aria-label={say('The job: {words}', { words: entry.words })}
                >
                  {say('job')}
                </Link>
              )}
            </span>
            {(entry.actId ?? entry.inspectionId) !== null && (
              <RowButton
                does={say('Take back')}
                aria-label={say('Take back: {words}', { words: entry.words })}
                variant="subtle"
                size="compact-xs"
                onClick={() => takeBack(entry)}
              />
            )}
          </Moment>
        ))}
      </ol>
      {car.timeline.length === 0 && (
        <p className={pieces.soft}>{say('Nothing has happened to this car here yet.')}</p>
      )}
    </Card>
  )
}

interface MomentProps {
  on: string
  sign: string
  children: ReactNode
}

function Moment({ on, sign, children }: MomentProps) {
  return (
    <li>
      <span className={own.on}>{fullDateWords(on)}</span>
      <span className={own.sign} aria-hidden="true">
        {sign}
      </span>
      {children}
    </li>
  )
}
