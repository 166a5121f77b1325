import { Button } from '@mantine/core'
import { useState } from 'react'
import type { ShelfAvailability } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { faultOf, trpc } from '../../data/trpc.ts'
import styles from './Book.module.css'

/** What lacks on the shelf for a place, in one line, and the order for it. */
export function ShelfPart({ shelf: { words, proposal } }: { shelf: ShelfAvailability }) {
  const writing = useSaving(trpc.orders.propose.mutationOptions())
  const [written, setWritten] = useState<string | null>(null)
  if (words === null) return null
  const write = () =>
    writing.save(
      { lines: proposal.map(({ offerId, packs, words: why }) => ({ offerId, packs, why: [why] })) },
      orders =>
        setWritten(
          say('✓ On order {orders}; send it from there.', {
            orders: orders.map(order => order.number).join(', '),
          }),
        ),
    )
  return (
    <div className={styles.short} role="note" aria-label={say('The shelf')}>
      <p>
        <b>⚑</b> {words}
      </p>
      {written !== null && <p role="status">{written}</p>}
      {writing.error !== null && <p role="alert">{faultOf(writing.error).message}</p>}
      {proposal.length > 0 && written === null && (
        <Button
          size="compact-sm"
          variant="default"
          loading={writing.busy}
          title={proposal.map(each => each.words).join(' ')}
          onClick={write}
        >
          {say('Put on today’s order')}
        </Button>
      )}
    </div>
  )
}
