import { Button, Group, SegmentedControl } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { RelayView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useAct, useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { longWords } from '../../../parts/time.ts'
import { Waiting } from '../../../parts/Waiting.tsx'
import { ChangeList } from './ChangeList.tsx'
import { Standing } from './Standing.tsx'

const spans = [
  { value: '3', label: say('Three days') },
  { value: '7', label: say('Week') },
  { value: '14', label: say('Two weeks') },
]

/** The floor laid anew beside the present plan: what would be better, car by car, and whether that is proven. */
export function Relay() {
  const [days, setDays] = useState('7')
  const asked = { days: Number(days) }
  const query = useQuery({
    ...trpc.dayPlan.relay.queryOptions(asked),
    placeholderData: before => before,
    refetchInterval: ({ state }) => (state.data?.run?.working ? 400 : false),
  })
  const beginning = useSaving(trpc.dayPlan.begin.mutationOptions())
  const stopping = useAct(trpc.dayPlan.stop.mutationOptions())
  const accepting = useSaving(trpc.dayPlan.accept.mutationOptions())
  const dropping = useAct(trpc.dayPlan.drop.mutationOptions())
  const view = query.data
  if (!view) return <Waiting error={query.error} words={say('Looking at the floor')} />
  const { run } = view
  const idle = !run?.working
  return (
    <>
      <div className={pieces.heading}>
        <h1>{say('Re-lay the floor')}</h1>
        <span className={pieces.soft}>{comingWords(view)}</span>
        <Group gap="xs" className={pieces.end}>
          <SegmentedControl
            aria-label={say('Cars that come within')}
            data={spans}
            value={days}
            onChange={setDays}
          />
          {idle ? (
            <Button
              variant={run && run.changes.length > 0 ? 'default' : 'filled'}
              disabled={view.coming === 0}
              loading={beginning.busy}
              onClick={() => beginning.save(asked)}
            >
              {run ? say('Look again||for a plan') : say('Look for a better plan')}
            </Button>
          ) : (
            <Button variant="default" loading={stopping.busy} onClick={() => stopping.run()}>
              {say('Stop')}
            </Button>
          )}
        </Group>
      </div>
      <Refused words={view.failed} />
      <Refused of={accepting.error ?? beginning.error ?? stopping.error ?? query.error} />
      <TakeBack view={view} />
      {view.broken.length > 0 && (
        <ul className={pieces.bare} aria-label={say('Places that cannot be kept')}>
          {view.broken.map(car => (
            <li key={car.jobId}>
              <b className={pieces.late}>⚑ {car.plate}</b> {car.words}
            </li>
          ))}
        </ul>
      )}
      {run && <Standing run={run} />}
      {run && run.changes.length > 0 && (
        <ChangeList
          key={run.runId}
          run={run}
          zone={view.zone}
          busy={accepting.busy}
          accept={jobIds => accepting.save({ runId: run.runId, jobIds })}
          leave={() => dropping.run()}
        />
      )}
      {!run && (
        <p className={pieces.soft}>
          {say(
            'Every car that has not come yet is looked at together: bays, people and times. First nobody waits for a car, then no bay stands blocked, then nothing is moved for nothing. Cars that are here or pinned stay, and no customer is asked to come sooner.',
          )}
        </p>
      )}
      <Pinned view={view} />
    </>
  )
}

function comingWords({ coming, left }: RelayView): string {
  const cars = say('{coming} {coming, plural, one {car} other {cars}} still to come', { coming })
  return left > 0 ? say('{cars}; {left} more stay as they are', { cars, left }) : cars
}

/** The way back from what was accepted last. */
function TakeBack({ view: { takeBack, zone, nowAt } }: { view: RelayView }) {
  const taking = useAct(trpc.dayPlan.takeBack.mutationOptions())
  if (!takeBack) return null
  return (
    <>
      <Group gap="sm">
        <span className={pieces.kept}>
          {say('✓ {cars} {cars, plural, one {car} other {cars}} re-laid {at}', {
            cars: takeBack.cars,
            at: longWords(takeBack.at, zone, nowAt),
          })}
        </span>
        <Button variant="default" size="compact-sm" loading={taking.busy} onClick={() => taking.run()}>
          {say('Take it back')}
        </Button>
      </Group>
      <Refused of={taking.error} />
    </>
  )
}

function Pinned({ view: { pinned } }: { view: RelayView }) {
  const pinning = useSaving(trpc.dayPlan.pin.mutationOptions())
  if (pinned.length === 0) return null
  return (
    <section aria-label={say('Pinned')}>
      <Refused of={pinning.error} />
      <ul className={`${pieces.bare} ${pieces.lines}`}>
        {pinned.map(({ jobId, version, plate, customerName }) => (
          <li key={jobId}>
            {say('📌 {plate}, {customerName}, stays where it is.', { plate, customerName })}{' '}
            <Button
              variant="default"
              size="compact-sm"
              aria-label={say('Unpin {plate}', { plate })}
              onClick={() => pinning.save({ id: jobId, version, pinned: false })}
            >
              {say('Unpin')}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  )
}
