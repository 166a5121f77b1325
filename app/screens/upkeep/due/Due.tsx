import { Button } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { DueState, DueView } from '../../../../main/api/views.ts'
import { dateOf } from '../../../../main/domain/calendar/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useNowAt } from '../../../data/now.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import { Behind, whileBehind } from '../Behind.tsx'
import { FailedPlans } from '../FailedPlans.tsx'
import { useActs } from '../useActs.tsx'
import { dueSigns } from '../words.ts'
import { Year } from '../year/Year.tsx'
import { ApproveChosen } from './ApproveChosen.tsx'
import { DueFilter, type Filter, noFilter } from './DueFilter.tsx'
import { DueTable } from './DueTable.tsx'

/** Visits listed at first, and by how many more each time. */
const pageSize = 200

/** Nobody works through a longer list: the filter finds what lies beyond. */
const mostListed = 5_000

/** Who is due: the year as the head, below it the visits with one act each, the reason behind it. */
export function Due() {
  const { zone } = useShop()
  const nowAt = useNowAt()
  const acts = useActs()
  const [filter, setFilter] = useState<Filter>(noFilter)
  const [chosen, setChosen] = useState<readonly string[]>([])
  const [limit, setLimit] = useState(pageSize)
  const [asked] = useDebouncedValue(filter, 200)
  const today = nowAt === null ? null : Temporal.PlainDate.from(dateOf(nowAt, zone))
  const { days, ...fields } = asked
  const query = useQuery({
    ...trpc.upkeep.due.queryOptions({
      fromDate: today?.toString() ?? '',
      toDate: today?.add({ days }).toString() ?? '',
      filter: fields,
      limit,
    }),
    refetchInterval: whileBehind,
    enabled: today !== null,
    placeholderData: before => before,
  })
  const due = query.data
  return (
    <>
      <ScreenTitle title={say('Upkeep')}>{due && <Counts due={due} />}</ScreenTitle>
      <Year acts={acts} />
      <Card aria-label={say('Visits||of upkeep')}>
        <div className={pieces.column}>
          {due && <Behind plans={due.behind} />}
          <DueFilter
            filter={filter}
            onChange={next => {
              setFilter(next)
              setLimit(pageSize)
            }}
          />
          {acts.bar}
          <Refused of={query.error} />
          {due && <ApproveChosen visits={due.visits} chosen={chosen} onDone={() => setChosen([])} />}
          {due &&
            (due.visits.length === 0 ? (
              <Nothing
                filtered={JSON.stringify(filter) !== JSON.stringify(noFilter)}
                onAll={() => setFilter(noFilter)}
              />
            ) : (
              <DueTable
                visits={due.visits}
                today={due.today}
                acts={acts}
                chosen={chosen}
                onChoose={setChosen}
              />
            ))}
          {due && due.total > due.visits.length && (
            <p className={pieces.soft}>
              {say('{visits} of {total} visits.', { visits: due.visits.length, total: due.total })}{' '}
              {limit < mostListed && (
                <Button variant="default" size="compact-sm" onClick={() => setLimit(limit + pageSize)}>
                  {say('Show {pageSize} more', {
                    pageSize: Math.min(pageSize, due.total - due.visits.length),
                  })}
                </Button>
              )}
            </p>
          )}
        </div>
      </Card>
      {due && <FailedPlans plans={due.failed} />}
    </>
  )
}

const counted = ['overdue', 'due', 'soon'] as const satisfies readonly DueState[]

function countWords(state: (typeof counted)[number], visits: number): string {
  if (state === 'overdue') return say('{visits} overdue', { visits })
  return state === 'due' ? say('{visits} due now', { visits }) : say('{visits} soon', { visits })
}

function Counts({ due }: { due: DueView }) {
  return (
    <p className={pieces.soft}>
      {counted.map((state, i) => (
        <span key={state} className={state === 'overdue' && due.counts.overdue > 0 ? pieces.late : undefined}>
          {i > 0 && ' · '}
          {dueSigns[state]} {countWords(state, due.counts[state])}
        </span>
      ))}
    </p>
  )
}

function Nothing({ filtered, onAll }: { filtered: boolean; onAll(): void }) {
  return filtered ? (
    <p className={pieces.empty}>
      {say('No visit by this filter.')}{' '}
      <Button variant="default" size="compact-sm" onClick={onAll}>
        {say('Show all')}
      </Button>
    </p>
  ) : (
    <p className={pieces.empty}>
      {say(
        'Nobody is due in this time. When a coated car goes home, its upkeep begins by itself: a first wash, a check-up, the topper’s renewal and a yearly look. For a car coated before, open it from its customer and enter what lies on it.',
      )}
    </p>
  )
}
