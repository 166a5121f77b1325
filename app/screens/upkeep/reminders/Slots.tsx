import { Button } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import type { MessageView } from '../../../../main/api/views.ts'
import { useSaving } from '../../../data/saving.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { Refused } from '../../../parts/form/Refused.tsx'
import { longWords } from '../../../parts/time.ts'
import own from './Reminders.module.css'

interface Props {
  message: MessageView
  onBooked(words: string): void
}

/** The times a message proposes, each held on the board; the one the owner takes becomes the booking. */
export function Slots({ message, onBooked }: Props) {
  const { zone } = useShop()
  const saving = useSaving(trpc.reminders.book.mutationOptions())
  const taken = message.slots.some(slot => slot.state === 'taken')
  if (message.slots.length === 0) return null
  return (
    <div>
      <h3>Proposed times</h3>
      <ul className={own.slots}>
        {message.slots.map((slot, i) => (
          <li key={slot.jobId} data-state={slot.state}>
            <span>
              {longWords(slot.dropOffAt, zone)}
              <small>
                {' '}
                home by {longWords(slot.handoverAt, zone)}
                {slot.state === 'held' && `, held until ${longWords(slot.heldUntilAt, zone)}`}
                {slot.state === 'gone' && ', not held any more'}
              </small>
            </span>
            {slot.state === 'taken' ? (
              <Link to="/jobs/$id" params={{ id: slot.jobId }}>
                ✓ booked
              </Link>
            ) : (
              !taken && (
                <Button
                  size="compact-sm"
                  variant="default"
                  loading={saving.busy}
                  aria-label={`They take it: ${longWords(slot.dropOffAt, zone)}`}
                  onClick={() =>
                    saving.save({ messageId: message.id, slot: i }, () =>
                      onBooked(`✓ ${message.plate} booked for ${longWords(slot.dropOffAt, zone)}.`),
                    )
                  }
                >
                  They take it
                </Button>
              )
            )}
          </li>
        ))}
      </ul>
      <Refused of={saving.error} />
    </div>
  )
}
