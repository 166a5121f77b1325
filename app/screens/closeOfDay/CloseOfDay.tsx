import { Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useRef, useState } from 'react'
import type { CloseOfDayView } from '../../../main/api/views.ts'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useNowAt } from '../../data/now.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Refused } from '../../parts/form/Refused.tsx'
import { useKeyWords } from '../../parts/keyWords.ts'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { Say } from '../../parts/Say.tsx'
import { dateWords } from '../../parts/time.ts'
import { useScreenKeys } from '../../parts/useScreenKeys.ts'
import styles from './CloseOfDay.module.css'
import { OrdersToSend } from './OrdersToSend.tsx'
import { ScanAnswer } from './ScanAnswer.tsx'
import { ScanBar } from './ScanBar.tsx'
import type { Counting } from './ShelfRow.tsx'
import { ShelfRows } from './ShelfRows.tsx'
import { StepsToConfirm } from './StepsToConfirm.tsx'
import { TakenToday } from './TakenToday.tsx'
import { useScan } from './useScan.ts'
import { Warnings } from './Warnings.tsx'

/** Letters, since a scanner types digits. */
const keys = [
  { keys: 'C', label: say('Confirm what was used as planned') },
  { keys: 'U', label: say('To what was used') },
  { keys: 'H', label: say('To the shelf') },
  { keys: 'O', label: say('To the orders') },
  { keys: '/', label: say('Type a code') },
]

/** The end of the day along the shelf: confirm, count, order, send. */
export function CloseOfDay() {
  const { zone } = useShop()
  const nowAt = useNowAt()
  const date = nowAt === null ? '' : dateOf(nowAt, zone)
  const query = useQuery({
    ...trpc.shelf.closeOfDay.queryOptions({ date }),
    enabled: date !== '',
    placeholderData: before => before,
  })
  if (query.error) return <Refused of={query.error} />
  if (!query.data) return <p className={pieces.soft}>{say('Checking the shelf …')}</p>
  return <Close view={query.data} />
}

function Close({ view }: { view: CloseOfDayView }) {
  const screen = useRef<HTMLDivElement>(null)
  const [counting, setCounting] = useState<Counting | null>(null)
  const scan = useScan(setCounting)
  const to = (part: number) => {
    const section = screen.current?.querySelectorAll('section')[part]
    const first =
      section?.querySelector<HTMLElement>('[data-confirm]') ??
      section?.querySelector<HTMLElement>('button, input, a')
    ;(first ?? section)?.focus()
    section?.scrollIntoView({ block: 'start' })
  }
  useKeyWords(say('Close of day'), keys)
  const typeCode = () => screen.current?.querySelector<HTMLInputElement>('form[data-scan] input')?.focus()
  useScreenKeys({ u: () => to(0), h: () => to(2), o: () => to(1), '/': typeCode })
  const { stepsToConfirm: steps, orders } = view
  // The one next act: what was scanned or is being counted, else what is to be confirmed, else what is to be sent.
  const counted = counting !== null || scan.answer?.kind === 'unknown'
  return (
    <div ref={screen} className={styles.screen}>
      <header className={styles.heading}>
        <h1>
          <Say
            text="Close of day <small>{boolean}</small>"
            values={{
              boolean: [
                dateWords(view.date),
                steps.length > 0 &&
                  say('{steps} {steps, plural, one {step} other {steps}} to confirm', {
                    steps: steps.length,
                  }),
                orders.length > 0 &&
                  say('{orders} {orders, plural, one {order} other {orders}} proposed', {
                    orders: orders.length,
                  }),
              ]
                .filter(Boolean)
                .join(' · '),
            }}
          />
        </h1>
        <ScanBar busy={scan.busy} onCode={scan.take} />
      </header>
      {scan.answer && (
        <ScanAnswer
          answer={scan.answer}
          onLearned={productId => {
            scan.clear()
            setCounting({ productId, lotId: null })
          }}
          onClose={scan.clear}
        />
      )}
      <div className={styles.columns}>
        <StepsToConfirm view={view} quiet={counted} />
        <OrdersToSend view={view} quiet={counted || steps.length > 0} />
      </div>
      <ShelfRows view={view} counting={counting} count={setCounting} />
      <Warnings warnings={view.warnings} />
      <Group className={pieces.soft}>
        <span>
          {say('Done today: {stepsConfirmed} confirmed, {counts} counted, {ordersSent} ordered.', {
            stepsConfirmed: view.done.stepsConfirmed,
            counts: view.done.counts,
            ordersSent: view.done.ordersSent,
          })}
        </span>
        <TakenToday date={view.date} />
        <RowButton does={say('Print')} variant="subtle" onClick={() => window.print()} />
      </Group>
    </div>
  )
}
