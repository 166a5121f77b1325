import { Button, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { AmissView } from '../../../../main/api/views.ts'
import { standingWords } from '../../../../main/domain/floor/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useSaving } from '../../../data/saving.ts'
import { client, trpc } from '../../../data/trpc.ts'
import { Refused } from '../../../parts/form/Refused.tsx'
import { OutToday } from '../../../parts/OutToday.tsx'
import pieces from '../../../parts/pieces.module.css'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import { longWords } from '../../../parts/time.ts'
import styles from './Mend.module.css'

type Car = AmissView['cars'][number]

/** Every promise that is not kept as things stand, each with its ways out: taken one by one, or all. */
export function Mend() {
  const view = useQuery({ ...trpc.mend.amiss.queryOptions(), refetchInterval: 60_000 })
  const { save, busy, error } = useSaving({
    mutationFn: (cars: Parameters<typeof client.mend.take.mutate>[0]['cars']) =>
      client.mend.take.mutate({ cars }),
  })
  if (!view.data) return <p className={pieces.soft}>{view.error?.message ?? say('Looking for ways out …')}</p>
  const { cars, zone, nowAt } = view.data
  const first = cars.flatMap(({ jobId, version, ways }) =>
    ways[0] ? { jobId, version, way: ways[0].way } : [],
  )
  const when = (at: number) => longWords(at, zone, nowAt)
  return (
    <div className={pieces.column}>
      <ScreenTitle title={say('Set right')}>
        <OutToday />
        {first.length > 1 && (
          <Button loading={busy} onClick={() => save(first)}>
            {say('Use the first option for all {cars}', { cars: first.length })}
          </Button>
        )}
      </ScreenTitle>
      <Refused of={error} />
      {cars.length === 0 ? (
        <p className={pieces.soft}>
          {say('Every promise is kept as things stand: one that is not stands here with its ways out.')}
        </p>
      ) : (
        <ul className={styles.cars} aria-label={say('Promises to set right')}>
          {cars.map((car, i) => (
            <li key={car.jobId} className={pieces.card}>
              <h2>
                <Link to="/jobs/$id" params={{ id: car.jobId }}>
                  {car.plate}
                </Link>{' '}
                <small>{car.customerName}</small>
              </h2>
              <p>
                <b className={pieces.late}>{standingWords(car, when)}</b> ·{' '}
                {say('promised {promisedAt}', { promisedAt: when(car.promisedAt) })}
              </p>
              {car.lackWords.map(words => (
                <p key={words} className={pieces.soft}>
                  {words}
                </p>
              ))}
              <Ways
                car={car}
                quiet={i > 0 || first.length > 1}
                when={when}
                busy={busy}
                take={way => save([{ jobId: car.jobId, version: car.version, way }])}
              />
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}

interface WaysProps {
  car: Car
  /** Leaves the filled button to another act of its screen. */
  quiet: boolean
  busy: boolean
  when(at: number): string
  take(way: Car['ways'][number]['way']): void
}

function Ways({ car, quiet, busy, when, take }: WaysProps) {
  return (
    <Group gap="xs">
      {car.ways.map((way, i) => (
        <Button
          key={way.way}
          size="compact-md"
          h="auto"
          variant={i === 0 && !quiet ? 'filled' : 'default'}
          disabled={busy}
          classNames={{ label: styles.way }}
          onClick={() => take(way.way)}
        >
          {way.kept
            ? say('{words}: promise kept', { words: way.words })
            : say('{words}: home {handoverAt}', { words: way.words, handoverAt: when(way.handoverAt) })}
        </Button>
      ))}
      <Button
        size="compact-md"
        variant={car.ways.length === 0 && !quiet ? 'filled' : 'default'}
        component={Link}
        to="/jobs/$id"
        params={{ id: car.jobId } as never}
      >
        {say('Ask {customerName}', { customerName: car.customerName })}
      </Button>
    </Group>
  )
}
