import { Button } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { ShelfAvailability } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { faultOf, trpc } from '../../data/trpc.ts'
import styles from './Book.module.css'

/** All that an offer says of the shelf, so that it is not said twice. */
export function shelfWords({ short, moved, proposal }: ShelfAvailability): string[] {
  return [...(moved === null ? [] : [moved]), ...[...short, ...(proposal ?? [])].map(each => each.words)]
}

/** What an offer knows of the shelf: chemicals that would be short, when they could be there, and the order for them. */
export function ShelfPart({ shelf }: { shelf: ShelfAvailability }) {
  const writing = useSaving(trpc.orders.propose.mutationOptions())
  const [written, setWritten] = useState<string | null>(null)
  const { short, moved, proposal } = shelf
  if (short.length === 0 && moved === null) return null
  const write = () =>
    writing.save(
      { lines: (proposal ?? []).map(({ offerId, packs, words }) => ({ offerId, packs, why: [words] })) },
      orders => setWritten(`✓ On order ${orders.map(order => order.number).join(', ')}; send it from there.`),
    )
  return (
    <div className={styles.short} role="note" aria-label="The shelf">
      {moved && <p>{moved}</p>}
      {short.map(each => (
        <p key={each.productId}>
          <b>⚑</b> {each.words}
        </p>
      ))}
      {proposal?.map(each => (
        <p key={each.offerId}>{each.words}</p>
      ))}
      <p role="status">{written}</p>
      {writing.error !== null && <p role="alert">{faultOf(writing.error).message}</p>}
      {proposal && proposal.length > 0 && written === null && (
        <Button
          size="compact-sm"
          variant="default"
          loading={writing.busy}
          onClick={event => {
            // Inside the offer's label a press would choose the offer too.
            event.preventDefault()
            write()
          }}
        >
          Write this order
        </Button>
      )}{' '}
      {short.length > 0 && (
        <Link to="/shelf/$section" params={{ section: 'orders' }}>
          Orders
        </Link>
      )}
    </div>
  )
}
