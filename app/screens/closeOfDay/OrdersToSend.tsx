import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { CloseOfDayView, OrderView, ProposedOrderView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { DraftOrder } from '../shelf/orders/DraftOrder.tsx'
import { SendDialog } from '../shelf/orders/SendDialog.tsx'
import styles from './CloseOfDay.module.css'
import { ProposedOrder } from './ProposedOrder.tsx'

/** What to order, supplier by supplier: proposed, taken over, looked through, sent. */
export function OrdersToSend({ view }: { view: CloseOfDayView }) {
  const orders = useQuery(trpc.orders.list.queryOptions()).data
  const drafts = (orders ?? []).filter(order => order.status === 'draft')
  const proposing = useSaving(trpc.orders.propose.mutationOptions())
  const [said, setSaid] = useState<string | null>(null)
  const [sending, setSending] = useState<OrderView | null>(null)
  const { currency } = view
  const proposed = view.orders.filter(order => !written(order, drafts))
  const propose = (wanted: ProposedOrderView[]) =>
    proposing.save({
      lines: wanted.flatMap(order => order.lines.map(({ offerId, packs, why }) => ({ offerId, packs, why }))),
    })
  return (
    <Card
      tabIndex={-1}
      className={styles.part}
      title="Orders"
      about={
        [
          proposed.length > 0 && `${proposed.length} proposed`,
          drafts.length > 0 && `${drafts.length} to send`,
        ]
          .filter(Boolean)
          .join(', ') || 'nothing to order'
      }
    >
      {proposed.length > 1 && (
        <RowButton does="Write them all" mb="xs" loading={proposing.busy} onClick={() => propose(proposed)} />
      )}
      <Refused of={proposing.error} />
      <p role="status" className={pieces.kept}>
        {said}
      </p>
      {proposed.length + drafts.length === 0 ? (
        <p className={pieces.empty}>
          What stands here and what is under way lasts until a delivery could follow. Look again tomorrow.
        </p>
      ) : (
        <div className={pieces.divided}>
          {proposed.map(order => (
            <ProposedOrder
              key={order.supplierId}
              order={order}
              currency={currency}
              busy={proposing.busy}
              write={() => propose([order])}
            />
          ))}
          {drafts.map(order => (
            <DraftOrder key={order.id} order={order} onSend={setSending} />
          ))}
        </div>
      )}
      {sending && (
        <SendDialog order={sending} kind="order" onClose={() => setSending(null)} onSent={setSaid} />
      )}
    </Card>
  )
}

/** All that is proposed stands on the supplier's draft already. */
function written(order: ProposedOrderView, drafts: OrderView[]): boolean {
  const draft = drafts.find(each => each.id === order.draftId)
  return order.lines.every(line =>
    draft?.lines.some(own => own.productId === line.productId && own.packs >= line.packs),
  )
}
