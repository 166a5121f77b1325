import { Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { CloseOfDayView, OrderView, ProposedOrderView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { DraftOrder } from '../shelf/orders/DraftOrder.tsx'
import { SendDialog } from '../shelf/orders/SendDialog.tsx'
import styles from './CloseOfDay.module.css'
import { ProposedOrder } from './ProposedOrder.tsx'

/** What to order, supplier by supplier: sent with one act, or looked through first. */
export function OrdersToSend({ view, quiet }: { view: CloseOfDayView; quiet: boolean }) {
  const orders = useQuery(trpc.orders.list.queryOptions()).data
  const drafts = (orders ?? []).filter(order => order.status === 'draft')
  const proposing = useSaving(trpc.orders.propose.mutationOptions())
  const all = useSaving(trpc.orders.sendAll.mutationOptions())
  const [said, setSaid] = useState<string[]>([])
  const [sending, setSending] = useState<OrderView | null>(null)
  const proposed = view.orders.filter(order => !written(order, drafts))
  const lines = proposed.flatMap(order =>
    order.lines.map(({ offerId, packs, why }) => ({ offerId, packs, why })),
  )
  // A draft that proposed lines are added to is sent with them.
  const joined = new Set(proposed.map(order => order.draftId))
  const whole = drafts.filter(draft => draft.lines.length > 0 && !joined.has(draft.id))
  const count = proposed.length + whole.length
  return (
    <Card
      tabIndex={-1}
      className={styles.part}
      title={say('Orders')}
      about={
        [
          proposed.length > 0 && say('{proposed} proposed', { proposed: proposed.length }),
          drafts.length > 0 && say('{drafts} to send', { drafts: drafts.length }),
        ]
          .filter(Boolean)
          .join(', ') || say('nothing to order')
      }
    >
      <Refused of={proposing.error ?? all.error} />
      <div role="status">
        {said.map(words => (
          <p key={words} className={words.startsWith('✕') ? pieces.late : pieces.kept}>
            {words}
          </p>
        ))}
      </div>
      {proposed.length + drafts.length === 0 ? (
        <p className={pieces.empty}>
          {say('What is here and on order lasts until the next delivery could arrive. Check again tomorrow.')}
        </p>
      ) : (
        <div className={pieces.divided}>
          {proposed.map(order => (
            <ProposedOrder key={order.supplierId} order={order} currency={view.currency} />
          ))}
          {drafts.map(order => (
            <DraftOrder key={order.id} order={order} quiet={quiet || count > 0} onSend={setSending} />
          ))}
          {count > 0 && (
            <div className={styles.orderActs}>
              <Button
                variant={quiet ? 'default' : 'filled'}
                loading={all.busy}
                onClick={() =>
                  all.save(
                    { lines, drafts: whole.map(({ id, version }) => ({ id, version })) },
                    ({ words }) => setSaid(words),
                  )
                }
              >
                {count === 1
                  ? say('Send it')
                  : count === 2
                    ? say('Send both')
                    : say('Send all {count}', { count })}
              </Button>
              {proposed.length > 0 && (
                <Button variant="default" loading={proposing.busy} onClick={() => proposing.save({ lines })}>
                  {say('Look first')}
                </Button>
              )}
            </div>
          )}
        </div>
      )}
      {sending && (
        <SendDialog
          order={sending}
          kind="order"
          onClose={() => setSending(null)}
          onSent={words => setSaid([words])}
        />
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
