import { Button, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link, useNavigate } from '@tanstack/react-router'
import type { WhatIfView } from '../../../../main/api/views.ts'
import { dateOf } from '../../../../main/domain/calendar/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useAct, useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { Table } from '../../../parts/Table.tsx'
import { durationWords, longWords } from '../../../parts/time.ts'
import { Waiting } from '../../../parts/Waiting.tsx'
import { keepCall, keptCall, rushCall } from '../../book/call.ts'
import { inTurn } from '../inTurn.ts'
import { Standing } from '../relay/Standing.tsx'
import { Suppose } from './Suppose.tsx'

/** What would become of every promise if something happened: seen before anything is decided. */
export function WhatIf() {
  const navigate = useNavigate()
  const query = useQuery({
    ...trpc.dayPlan.whatIf.stands.queryOptions(),
    refetchInterval: ({ state }) => (state.data?.run?.working ? 400 : false),
  })
  const beginning = useSaving(trpc.dayPlan.whatIf.begin.mutationOptions())
  const stopping = useAct(trpc.dayPlan.whatIf.stop.mutationOptions())
  const keeping = useSaving(trpc.dayPlan.whatIf.keep.mutationOptions())
  const discarding = useAct(trpc.dayPlan.whatIf.discard.mutationOptions())
  const view = query.data
  if (!view) return <Waiting error={query.error} words={say('Looking at the floor')} />
  const { run, what } = view
  return (
    <>
      <div className={pieces.heading}>
        <h1>{say('What if')}</h1>
        <span className={pieces.soft}>{say('Nothing is written until you keep it.')}</span>
      </div>
      {!run && (
        <Suppose
          nowAt={view.nowAt}
          busy={beginning.busy}
          error={beginning.error}
          ask={asked => beginning.save(asked)}
        />
      )}
      <Refused words={view.failed} />
      <Refused of={keeping.error ?? stopping.error ?? discarding.error ?? query.error} />
      {run && (
        <>
          <Standing run={run} />
          <Promises view={view} />
          <Group gap="sm">
            {run.working ? (
              <Button variant="default" loading={stopping.busy} onClick={() => stopping.run()}>
                {say('Stop')}
              </Button>
            ) : (
              <Button
                loading={keeping.busy}
                onClick={() =>
                  keeping.save({ runId: run.runId }, () => {
                    if (what?.kind !== 'rush') return
                    const { treatmentIds, sizeClass, toAt } = what
                    const rush = { treatmentIds, sizeClass, homeBy: dateOf(toAt, view.zone) }
                    keepCall(localStorage, rushCall(keptCall(localStorage, view.nowAt), rush), view.nowAt)
                    void navigate({ to: '/book' })
                  })
                }
              >
                {say('Keep it||what is supposed')}
              </Button>
            )}
            <Button variant="default" loading={discarding.busy} onClick={() => discarding.run()}>
              {say('Discard')}
            </Button>
            <span className={pieces.soft}>{keptWords(view)}</span>
          </Group>
          {view.cures && (
            <p className={pieces.soft}>
              {say('Every car to come gets the longer cure by the profile of {name}.', {
                name: view.cures.name,
              })}{' '}
              <Link to="/settings/$section" params={{ section: 'products' }}>
                {say('Change the profile')}
              </Link>
            </p>
          )}
        </>
      )}
    </>
  )
}

function keptWords({ run, kept }: WhatIfView): string {
  const cars = run?.changes.length ?? 0
  return say('Keeping it moves {cars, plural, =0 {no car} one {1 car} other {{cars} cars}} and {kept}.', {
    cars,
    kept: kept ?? '',
  })
}

/** Every promise that is touched, as it would be and as the best plan has it; how many are not. */
function Promises({ view }: { view: WhatIfView }) {
  const { promises, zone, rush } = view
  const touched = promises.filter(seen => seen.hit || seen.moves || seen.bestAt !== seen.expectedAt)
  const others = promises.length - touched.length
  const kept = (at: number, promisedAt: number) =>
    at <= promisedAt ? (
      <span className={pieces.kept}>✓ {longWords(at, zone)}</span>
    ) : (
      <span className={pieces.late}>
        {say('⚑ {at}, {at2} late', { at: longWords(at, zone), at2: durationWords(at - promisedAt) })}
      </span>
    )
  return (
    <section className={pieces.card} aria-label={say('Every promise')}>
      {rush && (
        <p>
          {say('The rush car: comes {dropOffAt}, home {handoverAt}, {bays}.', {
            dropOffAt: longWords(rush.dropOffAt, zone),
            handoverAt: longWords(rush.handoverAt, zone),
            bays: inTurn(rush.bays),
          })}{' '}
          {say('What is proposed counts it in.')}
        </p>
      )}
      <Table
        rows={touched}
        keyOf={seen => seen.jobId}
        empty={say('Every promise is kept, without moving a car.')}
        columns={[
          { head: say('Car'), cell: seen => <b>{seen.plate}</b> },
          { head: say('Promised'), cell: seen => longWords(seen.promisedAt, zone) },
          {
            head: say('If nobody does anything'),
            cell: seen =>
              seen.broken ? (
                <span className={pieces.late}>⚑ {seen.broken}</span>
              ) : (
                kept(seen.supposedAt, seen.promisedAt)
              ),
          },
          { head: say('Best plan'), cell: seen => kept(seen.bestAt, seen.promisedAt) },
        ]}
      />
      {touched.length > 0 && others > 0 && (
        <p className={pieces.soft}>
          {say('{others} {others, plural, one {other promise is} other {other promises are}} not touched.', {
            others,
          })}
        </p>
      )}
    </section>
  )
}
