import { Button, Group, Progress } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { type ReactNode, useState } from 'react'
import type { SpreadView, WeekView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useAct } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Lines } from '../../../parts/Facts.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { Table } from '../../../parts/Table.tsx'
import { dateWords } from '../../../parts/time.ts'
import { Waiting } from '../../../parts/Waiting.tsx'
import { whileBehind } from '../Behind.tsx'
import type { Acts } from '../useActs.tsx'
import own from './Year.module.css'
import { YearChart } from './YearChart.tsx'

/** The coming year of visits against the room for them, as it stands and as the spread would have it. */
export function Year({ acts }: { acts: Acts }) {
  const [spreading, setSpreading] = useState(false)
  const query = useQuery({ ...trpc.upkeep.year.queryOptions(), refetchInterval: whileBehind })
  const preview = useQuery({
    ...trpc.upkeep.spread.preview.queryOptions(),
    enabled: spreading,
    refetchInterval: ({ state }) => (state.data?.working ? 500 : false),
  })
  const beginning = useAct(trpc.upkeep.spread.begin.mutationOptions())
  const stopping = useAct(trpc.upkeep.spread.stop.mutationOptions())
  const applying = useAct(trpc.upkeep.spread.carryOut.mutationOptions())
  const year = query.data
  if (!year) return <Waiting error={query.error} words={say('Counting the year’s visits')} />
  const spread = spreading ? preview.data?.result : null
  const working = spreading ? preview.data?.working : null
  const total = year.weeks.reduce((sum, week) => sum + week.asDue, 0)
  const close = () => {
    setSpreading(false)
    applying.reset()
  }
  return (
    <section className={pieces.card} aria-labelledby="year">
      <Group justify="space-between" align="start" wrap="nowrap">
        <h2 id="year">
          {say('The year')}{' '}
          <small>
            {say('{total} due and not booked', { total: visitsText(total) })}
            {year.failed.length > 0 &&
              say(', {failed} left out that cannot be worked out', { failed: year.failed.length })}
          </small>
        </h2>
        {!spreading && (
          <Button
            variant="default"
            size="compact-sm"
            flex="none"
            loading={beginning.busy}
            onClick={() => beginning.run(() => setSpreading(true))}
            disabled={total === 0}
          >
            {say('Even out the weeks')}
          </Button>
        )}
      </Group>
      <YearChart
        weeks={spread?.weeks ?? year.weeks}
        before={spread ? year.weeks.map(week => week.planned) : null}
        head={!spreading}
      />
      {spreading && (
        <section className={pieces.column} aria-label={say('Even out the weeks')}>
          {working && <Finding of={working} />}
          {spread && <SpreadWords spread={spread} />}
          <p className={pieces.soft}>{year.roomWords}</p>
          <Refused words={preview.data?.failed ?? null} />
          <Refused of={applying.error ?? preview.error ?? stopping.error} />
          <Group>
            {spread && spread.moved > 0 && (
              <Button
                loading={applying.busy}
                onClick={() =>
                  applying.run(act => {
                    acts.done(act)
                    close()
                  })
                }
              >
                {say('Move {moved} to these weeks', { moved: visitsText(spread.moved) })}
              </Button>
            )}
            <Button
              variant="default"
              loading={stopping.busy}
              onClick={() => (working ? stopping.run(close) : close())}
            >
              {working ? say('Stop') : say('Leave it as it is')}
            </Button>
          </Group>
        </section>
      )}
      {spreading && <Weeks weeks={spread?.weeks ?? year.weeks} />}
    </section>
  )
}

const visitsText = (visits: number) =>
  say('{visits, plural, one {1 visit} other {{visits} visits}}', { visits })
const weeksText = (weeks: number) => say('{weeks, plural, one {1 week} other {{weeks} weeks}}', { weeks })

/** How far the search for weeks is. */
function Finding({ of: { done, total } }: { of: { done: number; total: number } }) {
  return (
    <>
      <p role="status" className={pieces.soft}>
        {say('Finding a week for every visit …')}
      </p>
      <Progress
        value={total === 0 ? 0 : (100 * done) / total}
        aria-label={say('Visits with a week so far')}
      />
    </>
  )
}

function SpreadWords({ spread }: { spread: SpreadView }) {
  const { moved, moves, left, leftOver, lateWeeks, earlyWeeks } = spread
  const leftOut = left.map(
    ({ plate, title, because }) =>
      `${plate} ${title}: ${because === 'full' ? say('every week of its window is full') : say('no week of its window is in this year')}`,
  )
  return (
    <>
      <p>
        {moved === 0
          ? say('Every visit is aimed at its best week already.')
          : say(
              '{moved, plural, one {1 visit is} other {{moved} visits are}} aimed at another week; taken together {lateWeeks} after and {earlyWeeks} before they fall due. Due days and windows stay as they are.',
              { moved, lateWeeks: weeksText(lateWeeks), earlyWeeks: weeksText(earlyWeeks) },
            )}
      </p>
      <Lines of={[...spread.words, ...leftOut]} />
      {leftOver > left.length && (
        <p>
          {say('{more, plural, one {1 more visit} other {{more} more visits}} found no week either.', {
            more: leftOver - left.length,
          })}
        </p>
      )}
      {moved > 0 && (
        <Folded
          summary={
            moved > moves.length
              ? say('Which visits: the first {moves}', { moves: moves.length })
              : say('Which visits')
          }
        >
          <Table
            rows={moves}
            keyOf={move => `${move.planId} ${move.ruleOn}`}
            columns={[
              { head: say('Car'), cell: move => move.plate, small: move => move.customerName },
              { head: say('Visit'), cell: move => move.title },
              { head: say('Due'), cell: move => dateWords(move.dueOn) },
              { head: say('Aimed at, now'), cell: move => dateWords(move.fromOn) },
              { head: say('Would be'), cell: move => dateWords(move.toOn) },
            ]}
          />
        </Folded>
      )}
    </>
  )
}

/** The picture's figures, for those who would rather read them. */
function Weeks({ weeks }: { weeks: readonly WeekView[] }) {
  return (
    <Folded summary={say('The weeks as a table')}>
      <Table
        rows={weeks}
        keyOf={week => week.beginsOn}
        columns={[
          { head: say('Week'), cell: ({ week }) => week },
          { head: say('From'), cell: ({ beginsOn }) => dateWords(beginsOn) },
          { head: say('Due'), number: true, cell: ({ asDue }) => asDue },
          {
            head: say('Aimed at'),
            number: true,
            cell: ({ planned, room }) => (
              <>
                {planned > room && <span className={pieces.late}>⚑ </span>}
                {planned}
              </>
            ),
          },
          { head: say('Room'), number: true, cell: ({ room }) => room },
        ]}
      />
    </Folded>
  )
}

/** A long table that is only there when it is asked for. */
function Folded({ summary, children }: { summary: string; children: ReactNode }) {
  return (
    <details>
      <summary>{summary}</summary>
      <div className={own.weeks}>{children}</div>
    </details>
  )
}
