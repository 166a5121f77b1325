import { Button, Group } from '@mantine/core'
import { useHotkeys } from '@mantine/hooks'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { useNowAt } from '../../data/now.ts'
import { trpc } from '../../data/trpc.ts'
import pieces from '../../parts/pieces.module.css'
import { HazardMark } from '../../parts/shelf/HazardMark.tsx'
import { WasteNotes } from '../../parts/shelf/WasteNotes.tsx'
import { TurnDays } from '../../parts/TurnDays.tsx'
import { clockWords, dateWords } from '../../parts/time.ts'
import { Arrivals } from './Arrivals.tsx'
import { BayCards } from './BayCards.tsx'
import { CrewColumns } from './CrewColumns.tsx'
import { Cures } from './Cures.tsx'
import { Handovers } from './Handovers.tsx'
import { Moments } from './Moments.tsx'
import styles from './Morning.module.css'

/** The day on one sheet: read across the room, or printed and hung up. */
export function Morning() {
  const nowAt = useNowAt()
  const shop = useQuery(trpc.shop.get.queryOptions()).data
  const [chosen, setChosen] = useState<string | null>(null)
  const today = shop && nowAt !== null ? dateOf(nowAt, shop.zone) : null
  const date = chosen ?? today
  const query = useQuery({
    ...trpc.morning.sheet.queryOptions({ date: date ?? '' }),
    enabled: date !== null,
    placeholderData: before => before,
  })
  const turn = (days: number) =>
    setChosen(days === 0 || !date ? null : Temporal.PlainDate.from(date).add({ days }).toString())
  useHotkeys([
    ['t', () => turn(0)],
    ['BracketLeft', () => turn(-1)],
    ['BracketRight', () => turn(1)],
    ['p', () => window.print()],
  ])
  const sheet = query.data
  if (!sheet) return <p className={pieces.soft}>{query.error?.message ?? 'Laying out the day …'}</p>
  return (
    <div className={styles.sheet}>
      <header className={pieces.heading}>
        <h1>Morning sheet, {dateWords(sheet.date)}</h1>
        <span className={pieces.soft}>
          {sheet.shopName} ·{' '}
          {sheet.open.length === 0
            ? 'closed today'
            : sheet.open
                .map(span => `${clockWords(span.from, sheet.zone)} to ${clockWords(span.to, sheet.zone)}`)
                .join(', ')}{' '}
          · as of {clockWords(sheet.nowAt, sheet.zone)}
        </span>
        <Group gap={4} className={styles.tools}>
          <TurnDays labels={['The day before', 'The day after']} onTurn={turn} />
          <Button onClick={() => window.print()}>Print</Button>
        </Group>
      </header>
      <BayCards sheet={sheet} />
      <div className={styles.columns}>
        <div className={styles.stack}>
          <Arrivals sheet={sheet} />
          <Handovers sheet={sheet} />
        </div>
        <Cures sheet={sheet} />
        <Moments sheet={sheet} />
      </div>
      <CrewColumns sheet={sheet} />
      <footer className={styles.cautions}>
        {sheet.cautions.map(caution => (
          <p key={caution.productId}>
            {caution.words}
            <HazardMark productId={caution.productId} />
          </p>
        ))}
        <WasteNotes productIds={sheet.cautions.map(caution => caution.productId)} />
        <p>The product’s data sheet, local codes and licensed practice decide; this sheet only reminds.</p>
      </footer>
    </div>
  )
}
