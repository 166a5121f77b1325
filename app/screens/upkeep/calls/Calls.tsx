import { Button, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { CallView, MessageView } from '../../../../main/api/views.ts'
import { say, withinSentence } from '../../../../main/domain/language/index.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { DocumentButton } from '../../../parts/DocumentButton.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { Say } from '../../../parts/Say.tsx'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import { Table } from '../../../parts/Table.tsx'
import { dateWords } from '../../../parts/time.ts'
import { Waiting } from '../../../parts/Waiting.tsx'
import { ActsBar } from '../ActsBar.tsx'
import { Outcomes } from '../reminders/Outcomes.tsx'
import { Slots } from '../reminders/Slots.tsx'
import styles from '../Upkeep.module.css'
import own from './Calls.module.css'

/** What the desk does by hand: whom to ring with which words, texts for its phone, letters to print. */
export function Calls() {
  const calls = useQuery(trpc.reminders.callList.queryOptions())
  const letters = useQuery(trpc.reminders.letters.queryOptions())
  const [said, setSaid] = useState<string | null>(null)
  if (!calls.data || !letters.data)
    return <Waiting error={calls.error ?? letters.error} words={say('Looking them up')} />
  return (
    <>
      <ScreenTitle title={say('Calls, texts and letters')} />
      <ActsBar>{said}</ActsBar>
      {calls.data.length + letters.data.length === 0 && (
        <p className={pieces.empty}>
          <Say
            text="Nothing to do by hand now. Owners who agree to a call, a text or a letter appear here once their message is approved under {link}, and only at hours at which they may be reached."
            values={{
              link: (
                <Link to="/upkeep/$section" params={{ section: 'reminders' }}>
                  {say('Reminders')}
                </Link>
              ),
            }}
          />
        </p>
      )}
      {calls.data.map(call => (
        <Call key={call.message.id} call={call} onDone={setSaid} />
      ))}
      {letters.data.length > 0 && (
        <Card title={say('Letters to print')} about={say('for a window envelope')}>
          <Table
            rows={letters.data}
            keyOf={letter => letter.id}
            columns={[
              {
                head: say('To||whom'),
                cell: letter => letter.customerName,
                small: letter => letter.address.replaceAll('\n', ', '),
              },
              {
                head: say('About'),
                cell: letter => `${letter.plate}, ${letter.title}`,
                small: letter => say('due {dueOn}', { dueOn: dateWords(letter.dueOn) }),
              },
              {
                heard: say('What may be done'),
                cell: letter => (
                  <Group gap="sm">
                    <DocumentButton
                      size="compact-sm"
                      path={`/documents/letter/${letter.id}.pdf`}
                      aria-label={say('Print the letter to {customerName}', {
                        customerName: letter.customerName,
                      })}
                    >
                      {say('Print')}
                    </DocumentButton>
                    <ByHand message={letter} label={say('It is posted')} onDone={setSaid} />
                  </Group>
                ),
              },
            ]}
          />
        </Card>
      )}
    </>
  )
}

function Call({ call, onDone }: { call: CallView; onDone(words: string): void }) {
  const { message, phone, script, sms } = call
  const title = sms
    ? say('Text {customerName}', { customerName: message.customerName })
    : say('Call {customerName}', { customerName: message.customerName })
  const about = (
    <>
      <Link to="/cars/$id" params={{ id: message.vehicleId }}>
        {message.plate}
      </Link>{' '}
      {say('· {title}, due {dueOn}', { title: message.title, dueOn: dateWords(message.dueOn) })}
    </>
  )
  return (
    <Card aria-label={title} title={title} about={about}>
      <div className={own.call}>
        <div className={pieces.column}>
          <p>
            <a className={own.number} href={`tel:${message.address}`}>
              {phone}
            </a>
          </p>
          {sms && (
            <>
              <img
                src={sms.qr}
                alt={say('The text to {customerName} as a QR code for the phone’s camera', {
                  customerName: message.customerName,
                })}
              />
              <Group gap="sm">
                <Button component="a" href={sms.link} variant="default">
                  {say('Open it as a text')}
                </Button>
                <ByHand message={message} label={say('The text is sent')} onDone={onDone} />
              </Group>
            </>
          )}
        </div>
        <div className={pieces.column}>
          <article
            className={styles.letter}
            lang={message.language}
            aria-label={sms ? say('The text') : say('What to say')}
          >
            {script}
          </article>
          <Slots message={message} onBooked={onDone} />
          {!sms && <Outcomes message={message} onDone={onDone} />}
        </div>
      </div>
    </Card>
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
  const { id, version, customerName } = message
  const done = () => onDone(`✓ ${customerName}: ${withinSentence(label)}.`)
  return (
    <>
      <Button
        size="compact-sm"
        loading={saving.busy}
        aria-label={`${label}: ${customerName}`}
        onClick={() => saving.save({ id, version }, done)}
      >
        {label}
      </Button>
      <Refused of={saving.error} />
    </>
  )
}
