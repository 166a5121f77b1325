import { Alert, Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { CloseOfDayView, OrderView, ProposedOrderView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { faultOf, trpc } from '../../data/trpc.ts'
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
    <section tabIndex={-1} className={styles.part} aria-labelledby="close-orders">
      <h2 id="close-orders">
        Orders{' '}
        <span>
          {proposed.length === 0 && drafts.length === 0
            ? 'nothing to order'
            : [
                proposed.length > 0 && `${proposed.length} proposed`,
                drafts.length > 0 && `${drafts.length} to send`,
              ]
                .filter(Boolean)
                .join(', ')}
        </span>
        {proposed.length > 1 && (
          <Button
            variant="default"
            size="xs"
            ml="md"
            loading={proposing.busy}
            onClick={() => propose(proposed)}
          >
            Write them all
          </Button>
        )}
      </h2>
      {proposing.error !== null && (
        <Alert color="red" variant="outline" role="alert" mb="sm">
          {faultOf(proposing.error).message}
        </Alert>
      )}
      <p role="status" className={styles.said}>
        {said}
      </p>
      {proposed.length + drafts.length === 0 ? (
        <p className={styles.empty}>
          What stands here and what is under way lasts until a delivery could follow. Look again tomorrow.
        </p>
      ) : (
        <div className={styles.card}>
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
    </section>
  )
}

/** All that is proposed stands on the supplier's draft already. */
function written(order: ProposedOrderView, drafts: OrderView[]): boolean {
  const draft = drafts.find(each => each.id === order.draftId)
  return order.lines.every(line =>
    draft?.lines.some(own => own.productId === line.productId && own.packs >= line.packs),
  )
}
