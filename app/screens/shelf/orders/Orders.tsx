import { Alert, Switch } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { OrderView } from '../../../../main/api/views.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { money } from '../../../parts/money.ts'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { dateWords } from '../../../parts/time.ts'
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
  const query = useQuery(trpc.orders.list.queryOptions())
  if (query.error) return <Alert color="red">{faultOf(query.error).message}</Alert>
  const orders = query.data
  const shown = (orders ?? []).filter(order => all || !over.has(order.status) || order.id === id)
  const order = orders?.find(each => each.id === id)
  return (
    <>
      <div className={styles.heading}>
        <h1>Orders</h1>
        <Link to="/close" className={styles.soft}>
          Proposals stand on the close of day
        </Link>
      </div>
      <div className={styles.side}>
        <div>
          <ul className={styles.rows} aria-label="Every order">
            {shown.map(each => (
              <li key={each.id} data-archived={each.status === 'cancelled'}>
                <Link to="/shelf/$section/$id" params={{ section: 'orders', id: each.id }}>
                  <b>
                    {each.number} · {each.supplierName}
                  </b>
                  <small className={each.late ? styles.late : undefined}>{stateWords(each)}</small>
                </Link>
              </li>
            ))}
          </ul>
          {orders && shown.length === 0 && (
            <p className={styles.empty}>
              Nothing is on its way. The close of day proposes what to order; or write an order here.
            </p>
          )}
          <NewOrder />
          <Switch
            mt="sm"
            label="Received and dropped ones too"
            checked={all}
            onChange={event => setAll(event.currentTarget.checked)}
          />
        </div>
        <div className={styles.stack}>
          <p role="status" className={styles.said}>
            {said}
          </p>
          {order?.status === 'draft' && (
            <div className={styles.bare}>
              <DraftOrder key={order.id} order={order} onSend={setSending} />
            </div>
          )}
          {order && order.status !== 'draft' && <SentOrder key={order.id} order={order} onSaid={setSaid} />}
          {!order && <p className={styles.empty}>Choose an order to see it.</p>}
        </div>
      </div>
      {sending && (
        <SendDialog
          order={sending}
          kind="order"
          onClose={() => setSending(null)}
          onSent={words => {
            setSending(null)
            setSaid(words)
          }}
        />
      )}
    </>
  )
}

function stateWords(order: OrderView): string {
  const due = order.expectedOn && !over.has(order.status) ? `, due ${dateWords(order.expectedOn)}` : ''
  if (order.late) return `⚑ ${order.late.words}`
  return `${orderStatusWords[order.status]}${due} · ${money(order.totalMinor, order.currency)}`
}
