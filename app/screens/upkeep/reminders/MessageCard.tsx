import { Alert, Button, Group } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { MessageView } from '../../../../main/api/views.ts'
import { useSaving } from '../../../data/saving.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { DocumentButton } from '../../../parts/DocumentButton.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { dateWords, longWords } from '../../../parts/time.ts'
import styles from '../Upkeep.module.css'
import { channelWords, outcomeWords, stateSigns, stateWords } from '../words.ts'
import { EditMessage } from './EditMessage.tsx'
import { Outcomes } from './Outcomes.tsx'
import { Slots } from './Slots.tsx'

interface Props {
  message: MessageView
  /** Something was decided about it, in words. */
  onDone(words: string): void
}

/** One message as it will arrive, with everything that can be done about it. */
export function MessageCard({ message, onDone }: Props) {
  const [editing, setEditing] = useState(false)
  const { zone } = useShop()
  const { state, channel } = message
  return (
    <section className={pieces.card} aria-label={`Message to ${message.customerName}`}>
      <h2>
        {message.customerName}{' '}
        <small>
          <Link to="/cars/$id" params={{ id: message.vehicleId }}>
            {message.plate}
          </Link>
          , {message.vehicleWords} · {message.title}, due {dateWords(message.dueOn)}
        </small>
      </h2>
      <div className={pieces.column}>
        <p className={pieces.soft}>
          {stateSigns[state]} {stateWords[state]}
          {message.sentAt !== null && ` ${longWords(message.sentAt, zone)}`} · {channelWords[channel]} to{' '}
          {message.address.replaceAll('\n', ', ')} · {message.templateName}, {message.language}
          {message.tryNo > 1 && ` · try ${message.tryNo}`}
          {message.attempts > 1 && ` · ${message.attempts} attempts`}
          {message.outcome && ` · ${outcomeWords[message.outcome]}`}
          {message.nextTryOn && ` · again on ${dateWords(message.nextTryOn)}`}
        </p>
        {message.words && (
          <Alert
            color={state === 'failed' ? 'red' : 'orange'}
            variant="outline"
            title={
              state === 'failed' ? 'It did not go out' : state === 'withdrawn' ? 'Withdrawn' : 'It waits'
            }
          >
            {message.words}
            {message.notBeforeAt !== null &&
              state === 'approved' &&
              ` Not before ${longWords(message.notBeforeAt, zone)}.`}
          </Alert>
        )}
        {message.unanswered > 0 && (
          <Alert color="orange" variant="outline" title="May have arrived twice">
            {message.unanswered === 1 ? 'One attempt' : `${message.unanswered} attempts`} ended without an
            answer: the owner may have had a copy each time.
          </Alert>
        )}
        {message.unfilled.length > 0 && (
          <Alert color="orange" variant="outline" title="A field is not filled">
            Nothing was found for {message.unfilled.map(name => `{{${name}}}`).join(', ')}: ____ stands in its
            place. It cannot be approved as it is: edit the words.{' '}
            {message.unfilled.some(name => name.startsWith('shop')) && (
              <>
                What is missing of the shop is entered in{' '}
                <Link to="/settings/$section" params={{ section: 'shop' }}>
                  its settings
                </Link>
                .
              </>
            )}
          </Alert>
        )}
        <Slots message={message} onBooked={onDone} />
        {editing ? (
          <EditMessage
            message={message}
            onDone={words => {
              setEditing(false)
              if (words) onDone(words)
            }}
          />
        ) : (
          <>
            <article className={styles.letter} lang={message.language} aria-label="The words">
              {channel !== 'text' && channel !== 'call' && (
                <b>
                  {message.subject}
                  {'\n\n'}
                </b>
              )}
              {message.body}
            </article>
            <MessageActs message={message} onEdit={() => setEditing(true)} onDone={onDone} />
          </>
        )}
        {state === 'sent' && <Outcomes message={message} onDone={onDone} />}
      </div>
    </section>
  )
}

interface ActsProps extends Props {
  onEdit(): void
}

function MessageActs({ message, onEdit, onDone }: ActsProps) {
  const approving = useSaving(trpc.reminders.approve.mutationOptions())
  const refusing = useSaving(trpc.reminders.refuse.mutationOptions())
  const retrying = useSaving(trpc.reminders.retry.mutationOptions())
  const testing = useSaving(trpc.reminders.sendTest.mutationOptions())
  const [tested, setTested] = useState<string | null>(null)
  const { id, version, state, plate, channel } = message
  const key = { id, version }
  const open = state === 'draft' || state === 'approved' || state === 'failed'
  if (!open) return null
  return (
    <>
      <Group gap="sm">
        {state === 'draft' && (
          <Button
            loading={approving.busy}
            disabled={message.unfilled.length > 0}
            onClick={() => approving.save(key, () => onDone(`✓ ${plate} approved.`))}
          >
            Approve
          </Button>
        )}
        {state === 'failed' && (
          <Button
            loading={retrying.busy}
            onClick={() =>
              retrying.save(key, () => onDone(`✓ ${plate} is tried again with the next sending.`))
            }
          >
            Try again
          </Button>
        )}
        <Button variant="default" onClick={onEdit}>
          Edit the words
        </Button>
        <Button
          variant="default"
          loading={refusing.busy}
          onClick={() => refusing.save(key, () => onDone(`– ${plate} is not written to about this visit.`))}
        >
          {state === 'draft' ? 'Refuse' : 'Withdraw'}
        </Button>
        {channel === 'email' && (
          <Button
            variant="subtle"
            loading={testing.busy}
            onClick={() =>
              testing.save({ id }, result => setTested(`${result.sent ? '✓' : '✕'} ${result.words}`))
            }
          >
            Send it to ourselves
          </Button>
        )}
        {channel === 'letter' && (
          <DocumentButton variant="subtle" path={`/documents/letter/${id}.pdf`}>
            Look at the PDF
          </DocumentButton>
        )}
      </Group>
      <div role="status">{tested}</div>
      <Refused of={approving.error ?? refusing.error ?? retrying.error ?? testing.error} />
    </>
  )
}
