import { Button } from '@mantine/core'
import { useInfiniteQuery, useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { HistoryFilter, HistoryLine } from '../../main/api/views.ts'
import { say } from '../../main/domain/language/index.ts'
import { trpc } from '../data/trpc.ts'
import { entityWords, pageOf } from './historyWords.ts'
import pieces from './pieces.module.css'
import { useTakeBack } from './useTakeBack.ts'
import { Waiting } from './Waiting.tsx'

interface Props {
  filter: HistoryFilter
  /** Each line says what it is about, and leads there. */
  told?: boolean
}

/** Who did what when, newest first; further back on demand. */
export function HistoryLines({ filter, told = false }: Props) {
  const query = useInfiniteQuery(
    trpc.history.list.infiniteQueryOptions(filter, { getNextPageParam: page => page.nextCursor }),
  )
  if (!query.data) return <Waiting error={query.error} words={say('Reading the history')} />
  const lines = query.data.pages.flatMap(page => page.lines)
  if (lines.length === 0) return <p className={pieces.soft}>{say('Nothing was done that fits this.')}</p>
  return (
    <>
      <ol className={`${pieces.bare} ${pieces.lines}`} aria-label={say('History')}>
        {lines.map(line => (
          <li key={line.id}>
            {line.when} · {line.who} · {told && <About line={line} />}
            {line.words}
            {line.actId !== null && <TakeBackLine actId={line.actId} words={line.words} />}
          </li>
        ))}
      </ol>
      {query.hasNextPage && (
        <div>
          <Button variant="default" loading={query.isFetchingNextPage} onClick={() => query.fetchNextPage()}>
            {say('Show earlier')}
          </Button>
        </div>
      )}
    </>
  )
}

/** Each line may lead to the whole act it was a part of. */
function TakeBackLine({ actId, words }: { actId: number; words: string }) {
  const { takeBack, busy } = useTakeBack()
  return (
    <>
      {' '}
      <Button
        size="compact-xs"
        variant="subtle"
        disabled={busy}
        aria-label={say('Take back: {words}', { words })}
        onClick={() => takeBack({ actId })}
      >
        {say('Take back')}
      </Button>
    </>
  )
}

function About({ line: { entity, entityId, name } }: { line: HistoryLine }) {
  // A job is called by its number, which says what it is.
  const words =
    entity === 'job' && name !== null ? name : [entityWords(entity), name].filter(Boolean).join(' ')
  const to = name === null ? null : pageOf(entity, entityId)
  return <>{to ? <Link {...to}>{words}</Link> : words}: </>
}

/** The history of one thing on its own page, read once it is opened. */
export function HistoryCard({ entities, id }: { entities: string[]; id: string }) {
  const [open, setOpen] = useState(false)
  return (
    <details className={pieces.card} onToggle={event => setOpen(event.currentTarget.open)}>
      <summary>{say('History')}</summary>
      {open && <HistoryLines filter={{ entities, entityId: id }} />}
    </details>
  )
}

/** The words there are to narrow the history by. */
export const useHistoryChoices = () => useQuery(trpc.history.choices.queryOptions()).data
