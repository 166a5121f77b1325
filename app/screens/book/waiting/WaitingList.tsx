import { Button, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { WaitingView } from '../../../../main/api/views.ts'
import { dateLocaleNow, say } from '../../../../main/domain/language/index.ts'
import { listWords } from '../../../../main/domain/words.ts'
import { useSaving } from '../../../data/saving.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import pieces from '../../../parts/pieces.module.css'
import { RowButton } from '../../../parts/RowButton.tsx'
import { nearWords, todayWords } from '../../../parts/time.ts'
import type { Call } from '../call.ts'
import { AddWaiting } from './AddWaiting.tsx'
import { PlaceMessage } from './PlaceMessage.tsx'

type Entry = WaitingView['entries'][number]

/** Callers who could not wait: who fits now, whom to ask, and what they said. */
export function WaitingList({ call }: { call: Call }) {
  const { freed } = Object.fromEntries(new URLSearchParams(location.search)) as { freed?: string }
  const query = useQuery(trpc.waiting.list.queryOptions(freed === undefined ? {} : { freedJobId: freed }))
  const [lost, setLost] = useState<{ customerName: string; phone: string | null; words: string }[]>([])
  const ask = useSaving(trpc.waiting.ask.mutationOptions())
  const answer = useSaving(trpc.waiting.answer.mutationOptions(), {
    onSaved: result => setLost(result.lost),
  })
  const remove = useSaving(trpc.waiting.remove.mutationOptions())
  const view = query.data
  if (!view) return null
  const busy = ask.busy || answer.busy || remove.busy
  const error = ask.error ?? answer.error ?? remove.error
  return (
    <Card title={say('Waiting list')}>
      {view.entries.length === 0 && (
        <p className={pieces.soft}>
          {say(
            'Nobody waits. A caller for whom no place fits goes on this list, and is found when one comes free.',
          )}
        </p>
      )}
      {error !== null && error !== undefined && <p role="alert">{faultOf(error).message}</p>}
      {lost.map(({ customerName, words }) => (
        <PlaceMessage key={customerName} title={say('Tell {customerName}', { customerName })} text={words} />
      ))}
      <ul className={`${pieces.bare} ${pieces.lines}`} aria-label={say('Waiting list')}>
        {view.entries.map(entry => (
          <li key={entry.id}>
            <Line entry={entry} view={view} />
            <Group gap="xs">
              {!entry.held && entry.fits && (
                <RowButton
                  does={say('Ask')}
                  of={entry.customer.name}
                  disabled={busy}
                  onClick={() => ask.save({ id: entry.id, version: entry.version })}
                />
              )}
              {entry.askedAt !== null && (entry.held || entry.fits) && (
                <>
                  <RowButton
                    does={say('They said yes')}
                    of={entry.customer.name}
                    disabled={busy}
                    onClick={() => answer.save({ id: entry.id, version: entry.version, answer: 'yes' })}
                  />
                  <RowButton
                    does={say('They said no')}
                    of={entry.customer.name}
                    disabled={busy}
                    onClick={() => answer.save({ id: entry.id, version: entry.version, answer: 'no' })}
                  />
                </>
              )}
              {(entry.held || entry.fits) && <Message id={entry.id} name={entry.customer.name} />}
              <RowButton
                does={say('Take off the list')}
                of={entry.customer.name}
                disabled={busy}
                onClick={() => remove.save({ id: entry.id, version: entry.version })}
              />
            </Group>
          </li>
        ))}
      </ul>
      <AddWaiting call={call} today={view.today} />
    </Card>
  )
}

/** Who, what and when, and whether there is a place. */
function Line({ entry, view }: { entry: Entry; view: WaitingView }) {
  const when = (at: number) => nearWords(at, view.zone, view.nowAt)
  const { fits, held } = entry
  return (
    <p>
      <Link to="/customers/$id" params={{ id: entry.customer.id }}>
        {entry.customer.name}
      </Link>{' '}
      · {entry.carName} · {listWords(entry.treatments)} ·{' '}
      {say('{fromOn} to {toOn}', { fromOn: dayWords(entry.fromOn), toOn: dayWords(entry.toOn) })}
      {entry.note && ` · ${entry.note}`}
      <br />
      {held ? (
        <b className={pieces.kept}>
          {say('Held until {untilAt}: comes {dropOffAt}, home {handoverAt}', {
            untilAt: todayWords(held.untilAt, view.zone, view.nowAt),
            dropOffAt: when(held.dropOffAt),
            handoverAt: when(held.promisedAt),
          })}
        </b>
      ) : fits ? (
        <b className={pieces.kept}>
          {say('✓ Fits: comes {dropOffAt}, home {handoverAt}', {
            dropOffAt: when(fits.dropOffAt),
            handoverAt: when(fits.handoverAt),
          })}
          {fits.gapMin > 0 &&
            ` · ${say('uses {percent} % of the freed time', {
              percent: Math.round((100 * fits.usedMin) / fits.gapMin),
            })}`}
        </b>
      ) : (
        <span className={pieces.soft}>{say('No place on these days yet')}</span>
      )}
    </p>
  )
}

function dayWords(day: string): string {
  return Temporal.PlainDate.from(day).toLocaleString(dateLocaleNow(), { day: 'numeric', month: 'short' })
}

/** The draft, looked up when it is wanted. */
function Message({ id, name }: { id: string; name: string }) {
  const [open, setOpen] = useState(false)
  const words = useQuery({ ...trpc.waiting.words.queryOptions({ id }), enabled: open }).data
  return (
    <>
      <Button size="compact-sm" variant="default" aria-expanded={open} onClick={() => setOpen(!open)}>
        {say('What to say')}
      </Button>
      {open && words && <PlaceMessage title={say('To {name}', { name })} text={words} />}
    </>
  )
}
