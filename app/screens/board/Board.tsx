import { Button, Group, SegmentedControl } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useMemo, useState } from 'react'
import { clip, dateOf, minutesIn, startOfDay } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useNowAt } from '../../data/now.ts'
import { trpc } from '../../data/trpc.ts'
import { CopiesWarnings } from '../../parts/copies/CopiesWarnings.tsx'
import { daySpans } from '../../parts/daySpans.ts'
import { GiveStep } from '../../parts/GiveStep.tsx'
import { useKeyWords } from '../../parts/keyWords.ts'
import { OutToday } from '../../parts/OutToday.tsx'
import pieces from '../../parts/pieces.module.css'
import { TurnDays } from '../../parts/TurnDays.tsx'
import { dateWords } from '../../parts/time.ts'
import { turnKeys } from '../../parts/turnKeys.ts'
import { useScreenKeys } from '../../parts/useScreenKeys.ts'
import { boardKeys } from './actions/boardKeys.ts'
import styles from './Board.module.css'
import { BoardCanvas } from './BoardCanvas.tsx'
import { FirstWeek } from './FirstWeek.tsx'
import { Legend } from './Legend.tsx'
import { useMove } from './move/useMove.ts'
import { PeopleRail } from './PeopleRail.tsx'
import { PromisesChanged } from './PromisesChanged.tsx'
import { SlipStrip } from './SlipStrip.tsx'
import { StatusLine } from './StatusLine.tsx'

function addDays(date: string, days: number): string {
  return Temporal.PlainDate.from(date).add({ days }).toString()
}

/** The bay calendar: bays down, time across. */
export function Board() {
  const navigate = useNavigate()
  const nowAt = useNowAt()
  const shop = useQuery(trpc.shop.get.queryOptions()).data
  const [days, setDays] = useState('3')
  const [chosenDate, setDate] = useState<string | null>(null)
  const control = useMove()
  const [giving, setGiving] = useState<{ jobId: string; toId?: string | undefined } | null>(null)
  const today = shop && nowAt !== null ? dateOf(nowAt, shop.zone) : null
  const fromDate = chosenDate ?? today
  const view = useQuery({
    ...trpc.board.range.queryOptions({ fromDate: fromDate ?? '', days: Number(days) }),
    enabled: fromDate !== null,
    placeholderData: before => before,
    // What a sensor posts moves the clocks without anybody saving here.
    refetchInterval: 60_000,
  })
  useKeyWords(say('Board'), boardKeys)
  const turn = (direction: -1 | 0 | 1) =>
    setDate(direction === 0 || !fromDate ? null : addDays(fromDate, direction * Number(days)))
  useScreenKeys({
    ...turnKeys(turn),
    ...Object.fromEntries(daySpans.map(({ value }) => [value, () => setDays(value)])),
  })
  const board = useMemo(
    () => (view.data && nowAt !== null ? { ...view.data, nowAt } : view.data),
    [view.data, nowAt],
  )
  const until = fromDate && addDays(fromDate, Number(days) - 1)
  return (
    <div className={styles.screen} data-paper="across">
      <PromisesChanged />
      <div className={pieces.heading}>
        <h1>{say('Board')}</h1>
        {board && fromDate && until && (
          <span className={pieces.soft}>
            {fromDate === until ? dateWords(fromDate) : `${dateWords(fromDate)} – ${dateWords(until)}`} ·{' '}
            {say('{bays} {bays, plural, one {bay} other {bays}}', { bays: board.bays.length })}
            {minutesIn(clip(board.open, board.fromAt, board.toAt)) < board.toAt - board.fromAt &&
              ` ${say('· closed hours folded')}`}
          </span>
        )}
        <Group gap="xs" ml="auto" className={pieces.unprinted}>
          <SegmentedControl aria-label={say('Days shown')} data={daySpans} value={days} onChange={setDays} />
          <TurnDays labels={[say('Earlier'), say('Later')]} onTurn={turn} />
          <OutToday />
          <Button
            variant="default"
            onClick={() => navigate({ to: '/plan/$section', params: { section: 'relay' } })}
          >
            {say('Re-lay')}
          </Button>
          <Button onClick={() => navigate({ to: '/book' })}>{say('Book a car')}</Button>
        </Group>
      </div>
      <FirstWeek />
      <CopiesWarnings />
      <Legend />
      {board && <SlipStrip board={board} />}
      <div className={styles.sheet} aria-busy={view.isPlaceholderData}>
        {board && fromDate ? (
          <>
            <BoardCanvas
              board={board}
              days={Number(days)}
              originAt={startOfDay(fromDate, board.zone)}
              control={control}
              openJob={id => navigate({ to: '/jobs/$id', params: { id } })}
              people={jobId => setGiving({ jobId })}
            />
            {board.stays.length === 0 && (
              <p className={styles.empty}>
                {say(
                  'Nothing stands here on these days. Book a car (G then K, or the button above), and it appears with the hours its coating blocks.',
                )}
              </p>
            )}
            <PeopleRail board={board} people={(jobId, toId) => setGiving({ jobId, toId })} />
            <StatusLine board={board} move={control.move} />
          </>
        ) : (
          <p className={styles.empty}>{view.error ? view.error.message : say('Looking up the bays …')}</p>
        )}
      </div>
      {giving && <GiveStep {...giving} onClose={() => setGiving(null)} />}
    </div>
  )
}
