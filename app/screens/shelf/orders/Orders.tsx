import { Switch } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { OrderView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { money } from '../../../parts/money.ts'
import pieces from '../../../parts/pieces.module.css'
import { RowLinks } from '../../../parts/RowLinks.tsx'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { dateWords } from '../../../parts/time.ts'
import { Waiting } from '../../../parts/Waiting.tsx'
import styles from '../Shelf.module.css'
import { orderStatusWords } from '../words.ts'
import { DraftOrder } from './DraftOrder.tsx'
import { NewOrder } from './NewOrder.tsx'
import { SendDialog } from './SendDialog.tsx'
import { SentOrder } from './SentOrder.tsx'

const over = new Set<OrderView['status']>(['received', 'cancelled'])

/** What is on its way: written, sent, received in part, asked after. */
export function Orders({ id }: SectionProps) {
  const [all, setAll] = useState(false)
  const [said, setSaid] = useState<string | null>(null)
  const [sending, setSending] = useState<OrderView | null>(null)
  const { data: orders, error } = useQuery(trpc.orders.list.queryOptions())
  if (!orders) return <Waiting error={error} words={say('Looking them up')} />
  const shown = orders.filter(order => all || !over.has(order.status) || order.id === id)
  const order = orders.find(each => each.id === id)
  return (
    <>
      <ScreenTitle title={say('Orders')}>
        <Link to="/close" className={pieces.soft}>
          {say('Proposals stand on the close of day')}
        </Link>
      </ScreenTitle>
      <div className={pieces.side}>
        <div className={pieces.column}>
          <RowLinks
            label={say('Every order')}
            to="/shelf/$section/$id"
            section="orders"
            rows={shown.map(each => ({
              id: each.id,
              title: `${each.number} · ${each.supplierName}`,
              about: <StateWords order={each} />,
              archived: each.status === 'cancelled',
            }))}
          />
          {shown.length === 0 && (
            <p className={pieces.empty}>
              {say('Nothing is on its way. The close of day proposes what to order; or write an order here.')}
            </p>
          )}
          <NewOrder />
          <Switch
            label={say('Received and dropped ones too')}
            checked={all}
            onChange={event => setAll(event.currentTarget.checked)}
          />
        </div>
        <div className={pieces.column}>
          <p role="status" className={styles.said}>
            {said}
          </p>
          {order?.status === 'draft' && (
            <div className={pieces.box}>
              <DraftOrder key={order.id} order={order} onSend={setSending} />
            </div>
          )}
          {order && order.status !== 'draft' && <SentOrder key={order.id} order={order} onSaid={setSaid} />}
          {!order && shown.length > 0 && <p className={pieces.empty}>{say('Choose an order to see it.')}</p>}
        </div>
      </div>
      {sending && (
        <SendDialog order={sending} kind="order" onClose={() => setSending(null)} onSent={setSaid} />
      )}
    </>
  )
}

function StateWords({ order }: { order: OrderView }) {
  const { late, status, expectedOn } = order
  if (late) return <span className={pieces.late}>⚑ {late.words}</span>
  const due =
    expectedOn && !over.has(status) ? say(', due {expectedOn}', { expectedOn: dateWords(expectedOn) }) : ''
  return `${orderStatusWords[status]}${due} · ${money(order.totalMinor, order.currency)}`
}
