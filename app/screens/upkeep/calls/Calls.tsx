import { Alert, Button, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { CallView, MessageView } from '../../../../main/api/views.ts'
import { documentHref } from '../../../data/door.ts'
import { useSaving } from '../../../data/saving.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { faultsOf } from '../../../parts/faults.ts'
import { dateWords } from '../../../parts/time.ts'
import { Outcomes } from '../reminders/Outcomes.tsx'
import { Slots } from '../reminders/Slots.tsx'
import styles from '../Upkeep.module.css'
import own from './Calls.module.css'

/** What the desk does by hand: whom to ring with which words, texts for its phone, letters to print. */
export function Calls() {
  const calls = useQuery(trpc.reminders.callList.queryOptions())
  const letters = useQuery(trpc.reminders.letters.queryOptions())
  const [said, setSaid] = useState<string | null>(null)
  const error = calls.error ?? letters.error
  if (error) return <Alert color="red">{faultOf(error).message}</Alert>
  if (!calls.data || !letters.data) return <p className={styles.soft}>Looking them up …</p>
  const none = calls.data.length + letters.data.length === 0
  return (
    <>
      <div className={styles.heading}>
        <h1>Calls, texts and letters</h1>
      </div>
      <div role="status" aria-label="Last act" className={styles.acts}>
        {said}
      </div>
      {none && (
        <p className={styles.empty}>
          Nothing to do by hand now. Owners who agree to a call, a text or a letter appear here once their
          message is approved under{' '}
          <Link to="/upkeep/$section" params={{ section: 'reminders' }}>
            Reminders
          </Link>
          , and only at hours at which they may be reached.
        </p>
      )}
      {calls.data.map(call => (
        <Call key={call.message.id} call={call} onDone={setSaid} />
      ))}
      {letters.data.length > 0 && (
        <section className={styles.card} aria-labelledby="letters">
          <h2 id="letters">
            Letters to print <small>for a window envelope</small>
          </h2>
          <table className={styles.table}>
            <thead>
              <tr>
                <th scope="col">To</th>
                <th scope="col">About</th>
                <th scope="col">Do</th>
              </tr>
            </thead>
            <tbody>
              {letters.data.map(letter => (
                <Letter key={letter.id} letter={letter} onDone={setSaid} />
              ))}
            </tbody>
          </table>
        </section>
      )}
    </>
  )
}

function Call({ call, onDone }: { call: CallView; onDone(words: string): void }) {
  const { message, phone, script, sms } = call
  return (
    <section className={styles.card} aria-label={`${sms ? 'Text' : 'Call'} ${message.customerName}`}>
      <h2>
        {sms ? 'Text' : 'Call'} {message.customerName}{' '}
        <small>
          <Link to="/cars/$id" params={{ id: message.vehicleId }}>
            {message.plate}
          </Link>{' '}
          · {message.title}, due {dateWords(message.dueOn)}
        </small>
      </h2>
      <div className={own.call}>
        <div className={styles.stack}>
          <p className={own.phone}>
            <a className={own.number} href={`tel:${message.address}`}>
              {phone}
            </a>
          </p>
          {sms && (
            <>
              <img
                src={sms.qr}
                alt={`The text to ${message.customerName} as a QR code for the phone’s camera`}
              />
              <Group gap="sm">
                <Button component="a" href={sms.link} variant="default">
                  Open it as a text
                </Button>
                <ByHand message={message} label="The text is sent" onDone={onDone} />
              </Group>
            </>
          )}
        </div>
        <div className={styles.stack}>
          <article
            className={styles.letter}
            lang={message.language}
            aria-label={sms ? 'The text' : 'What to say'}
          >
            {script}
          </article>
          <Slots message={message} onBooked={onDone} />
          {!sms && <Outcomes message={message} onDone={onDone} />}
        </div>
      </div>
    </section>
  )
}

function Letter({ letter, onDone }: { letter: MessageView; onDone(words: string): void }) {
  return (
    <tr>
      <td>
        {letter.customerName} <small>{letter.address.replaceAll('\n', ', ')}</small>
      </td>
      <td>
        {letter.plate}, {letter.title} <small>due {dateWords(letter.dueOn)}</small>
      </td>
      <td>
        <Group gap="sm">
          <Button
            component="a"
            variant="default"
            size="compact-sm"
            href={documentHref(`/documents/letter/${letter.id}.pdf`)}
            target="_blank"
            rel="noreferrer"
            aria-label={`Print the letter to ${letter.customerName}`}
          >
            Print
          </Button>
          <ByHand message={letter} label="It is posted" onDone={onDone} />
        </Group>
      </td>
    </tr>
  )
}

interface ByHandProps {
  message: MessageView
  label: string
  onDone(words: string): void
}

/** Says that it left the shop: only then does it count as sent. */
function ByHand({ message, label, onDone }: ByHandProps) {
  const saving = useSaving(trpc.reminders.sentByHand.mutationOptions())
  const words = faultsOf(saving.error).rest()
  const { id, version } = message
  return (
    <>
      <Button
        size="compact-sm"
        loading={saving.busy}
        aria-label={`${label}: ${message.customerName}`}
        onClick={() =>
          saving.save({ id, version }, () => onDone(`✓ ${message.customerName}: ${label.toLowerCase()}.`))
        }
      >
        {label}
      </Button>
      {words && <span className={styles.late}>{words}</span>}
    </>
  )
}
