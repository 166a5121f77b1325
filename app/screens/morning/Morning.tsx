import { Button, Group, SegmentedControl } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import type { MorningView } from '../../../main/api/views.ts'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { isAmiss, standingWords } from '../../../main/domain/floor/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useNowAt } from '../../data/now.ts'
import { trpc } from '../../data/trpc.ts'
import { DocumentButton } from '../../parts/DocumentButton.tsx'
import { useKeyWords } from '../../parts/keyWords.ts'
import { OutToday } from '../../parts/OutToday.tsx'
import pieces from '../../parts/pieces.module.css'
import { HazardMark } from '../../parts/shelf/HazardMark.tsx'
import { WasteNotes } from '../../parts/shelf/WasteNotes.tsx'
import { TurnDays } from '../../parts/TurnDays.tsx'
import { clockWords, dateWords } from '../../parts/time.ts'
import { turnKeys, turnWords } from '../../parts/turnKeys.ts'
import { useScreenKeys } from '../../parts/useScreenKeys.ts'
import { DayRows } from './DayRows.tsx'
import { bayRows, crewRows } from './daySheet.ts'
import { Lists } from './Lists.tsx'
import styles from './Morning.module.css'

const views = [
  { value: 'bays', label: say('By bay') },
  { value: 'crew', label: say('By person') },
] as const

const keys = [...turnWords, { keys: 'P', label: say('print') }]

/** The day in one picture: read across the room, on a wall screen that refreshes itself, or printed and hung up. */
export function Morning() {
  const navigate = useNavigate()
  const nowAt = useNowAt()
  const shop = useQuery(trpc.shop.get.queryOptions()).data
  const [chosen, setChosen] = useState<string | null>(null)
  const [shown, setShown] = useState<'bays' | 'crew'>('bays')
  const today = shop && nowAt !== null ? dateOf(nowAt, shop.zone) : null
  const date = chosen ?? today
  const query = useQuery({
    ...trpc.morning.sheet.queryOptions({ date: date ?? '' }),
    enabled: date !== null,
    placeholderData: before => before,
    refetchInterval: 60_000,
  })
  const turn = (days: number) =>
    setChosen(days === 0 || !date ? null : Temporal.PlainDate.from(date).add({ days }).toString())
  useKeyWords(say('Morning'), keys)
  useScreenKeys({ ...turnKeys(turn), p: () => window.print() })
  const sheet = query.data
  if (!sheet) return <p className={pieces.soft}>{query.error?.message ?? say('Laying out the day …')}</p>
  const other = (view: typeof shown) => (view === shown ? undefined : styles.other)
  return (
    <div className={styles.sheet} data-paper="across">
      <header className={pieces.heading}>
        <h1>{say('Morning sheet, {date}', { date: dateWords(sheet.date) })}</h1>
        <span className={pieces.soft}>{dayWords(sheet)}</span>
        {sheet.handovers
          .filter(car => car.leftAt === null && isAmiss(car))
          .map(car => (
            <b key={car.jobId} className={pieces.late}>
              {car.plate} {standingWords(car, at => clockWords(at, sheet.zone))}
            </b>
          ))}
        <Group gap={8} className={`${pieces.end} ${pieces.unprinted}`}>
          <SegmentedControl aria-label={say('Show')} data={[...views]} value={shown} onChange={setShown} />
          <TurnDays labels={[say('The day before'), say('The day after')]} onTurn={turn} />
          <OutToday />
          <Button
            variant="default"
            onClick={() => navigate({ to: '/plan/$section', params: { section: 'relay' } })}
          >
            {say('Re-lay')}
          </Button>
          <DocumentButton path={`/documents/day/${sheet.date}.pdf`}>{say('Day sheet')}</DocumentButton>
          <Button onClick={() => window.print()}>{say('Print')}</Button>
        </Group>
      </header>
      <DayRows sheet={sheet} label={say('By bay')} rows={bayRows(sheet)} className={other('bays')} />
      <DayRows sheet={sheet} label={say('By person')} rows={crewRows(sheet)} className={other('crew')} />
      <Lists sheet={sheet} />
      <footer className={styles.cautions}>
        {sheet.cautions.map(caution => (
          <p key={caution.productId}>
            {caution.words}
            <HazardMark productId={caution.productId} />
          </p>
        ))}
        <WasteNotes productIds={sheet.cautions.map(caution => caution.productId)} />
        <p>
          {say(
            'The product’s data sheet, local codes and licensed practice decide; this sheet only reminds.',
          )}
        </p>
      </footer>
    </div>
  )
}

/** "08:00 – 18:00 · 6 cars in, 3 going home · as of 07:40" */
function dayWords(sheet: MorningView): string {
  const clock = (at: number) => clockWords(at, sheet.zone)
  const cars = new Set(sheet.bays.flatMap(bay => bay.cars.map(car => car.jobId))).size
  return [
    sheet.open.length === 0
      ? say('closed today')
      : sheet.open.map(span => `${clock(span.from)} – ${clock(span.to)}`).join(', '),
    say('{cars} {cars, plural, one {car} other {cars}} in, {handovers} going home', {
      cars,
      handovers: sheet.handovers.length,
    }),
    say('as of {nowAt}', { nowAt: clock(sheet.nowAt) }),
  ].join(' · ')
}
