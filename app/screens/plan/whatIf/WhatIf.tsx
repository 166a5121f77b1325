import { Button, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import type { WhatIfView } from '../../../../main/api/views.ts'
import { useAct, useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { Table } from '../../../parts/Table.tsx'
import { durationWords, longWords } from '../../../parts/time.ts'
import { Waiting } from '../../../parts/Waiting.tsx'
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
  if (!view) return <Waiting error={query.error} words="Looking at the floor" />
  const { run, what } = view
  return (
    <>
      <div className={pieces.heading}>
        <h1>What if</h1>
        <span className={pieces.soft}>Nothing is written until you keep it.</span>
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
                Stop
              </Button>
            ) : (
              <Button
                loading={keeping.busy}
                onClick={() =>
                  keeping.save({ runId: run.runId }, () => {
                    if (what?.kind === 'rush') void navigate({ to: '/book' })
                  })
                }
              >
                Keep it
              </Button>
            )}
            <Button variant="default" loading={discarding.busy} onClick={() => discarding.run()}>
              Discard
            </Button>
            <span className={pieces.soft}>{keptWords(view)}</span>
          </Group>
        </>
      )}
    </>
  )
}

function keptWords({ run, kept }: WhatIfView): string {
  const cars = run?.changes.length ?? 0
  const moves = cars === 0 ? 'moves no car' : `moves ${cars} ${cars === 1 ? 'car' : 'cars'}`
  return `Keeping it ${moves} and ${kept}.`
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
        ⚑ {longWords(at, zone)}, {durationWords(at - promisedAt)} late
      </span>
    )
  return (
    <section className={pieces.card} aria-label="Every promise">
      {rush && (
        <p>
          The rush car: comes {longWords(rush.dropOffAt, zone)}, home {longWords(rush.handoverAt, zone)},{' '}
          {rush.bays.join(', then ')}.
        </p>
      )}
      <Table
        rows={touched}
        keyOf={seen => seen.jobId}
        empty="Every promise is kept, without moving a car."
        columns={[
          { head: 'Car', cell: seen => <b>{seen.plate}</b> },
          { head: 'Promised', cell: seen => longWords(seen.promisedAt, zone) },
          {
            head: 'If nobody does anything',
            cell: seen =>
              seen.broken ? (
                <span className={pieces.late}>⚑ {seen.broken}</span>
              ) : (
                kept(seen.supposedAt, seen.promisedAt)
              ),
          },
          { head: 'Best plan', cell: seen => kept(seen.bestAt, seen.promisedAt) },
        ]}
      />
      {touched.length > 0 && others > 0 && (
        <p className={pieces.soft}>
          {others} {others === 1 ? 'other promise is' : 'other promises are'} not touched.
        </p>
      )}
    </section>
  )
}
