import { Button } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import type { MessageView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
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
      <h3>{say('Proposed times')}</h3>
      <ul className={own.slots}>
        {message.slots.map((slot, i) => (
          <li key={slot.jobId} data-state={slot.state}>
            <span>
              {longWords(slot.dropOffAt, zone)}
              <small>
                {' '}
                {say('home by {handoverAt}', { handoverAt: longWords(slot.handoverAt, zone) })}
                {slot.state === 'held' &&
                  say(', held until {heldUntilAt}', { heldUntilAt: longWords(slot.heldUntilAt, zone) })}
                {slot.state === 'gone' && say(', not held any more')}
              </small>
            </span>
            {slot.state === 'taken' ? (
              <Link to="/jobs/$id" params={{ id: slot.jobId }}>
                {say('✓ booked')}
              </Link>
            ) : (
              !taken && (
                <Button
                  size="compact-sm"
                  variant="default"
                  loading={saving.busy}
                  aria-label={say('They take it: {dropOffAt}', {
                    dropOffAt: longWords(slot.dropOffAt, zone),
                  })}
                  onClick={() =>
                    saving.save({ messageId: message.id, slot: i }, () =>
                      onBooked(
                        say('✓ {plate} booked for {dropOffAt}.', {
                          plate: message.plate,
                          dropOffAt: longWords(slot.dropOffAt, zone),
                        }),
                      ),
                    )
                  }
                >
                  {say('They take it')}
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
