import { Alert, Button, Group } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import { useEffect, useRef, useState } from 'react'
import type { MessageView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useSaving } from '../../../data/saving.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { DocumentButton } from '../../../parts/DocumentButton.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { Say } from '../../../parts/Say.tsx'
import { dateWords, longWords } from '../../../parts/time.ts'
import styles from '../Upkeep.module.css'
import { channelWords, outcomeWords, stateSigns, stateWords } from '../words.ts'
import { EditMessage } from './EditMessage.tsx'
import { Outcomes } from './Outcomes.tsx'
import { Slots } from './Slots.tsx'

interface Props {
  message: MessageView
  /** It was asked for, and is not merely the first of the list: the keyboard goes on in it. */
  opened?: boolean
  /** Something was decided about it, in words. */
  onDone(words: string): void
}

/** One message as it will arrive, with everything that can be done about it. */
export function MessageCard({ message, opened = false, onDone }: Props) {
  const [editing, setEditing] = useState(false)
  const { zone } = useShop()
  const { state, channel } = message
  const card = useRef<HTMLElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: a decision takes its button away, and the focus with it
  useEffect(() => {
    const at = document.activeElement
    if (opened && (at === null || at === document.body || at.matches('a')))
      card.current?.focus({ preventScroll: true })
  }, [opened, state])
  return (
    <section
      ref={card}
      tabIndex={-1}
      className={pieces.card}
      aria-label={say('Message to {customerName}', { customerName: message.customerName })}
    >
      <h2>
        {message.customerName}{' '}
        <small>
          <Link to="/cars/$id" params={{ id: message.vehicleId }}>
            {message.plate}
          </Link>
          {say(', {vehicleWords} · {title}, due {dueOn}', {
            vehicleWords: message.vehicleWords,
            title: message.title,
            dueOn: dateWords(message.dueOn),
          })}
        </small>
      </h2>
      <div className={pieces.column}>
        <p className={pieces.soft}>
          {stateSigns[state]} {stateWords[state]}
          {message.sentAt !== null && ` ${longWords(message.sentAt, zone)}`}{' '}
          {say('· {channelWords} to {address} · {templateName}, {language}', {
            channelWords: channelWords[channel],
            address: message.address.replaceAll('\n', ', '),
            templateName: message.templateName,
            language: message.language,
          })}
          {message.tryNo > 1 && ` ${say('· try {tryNo}', { tryNo: message.tryNo })}`}
          {message.attempts > 1 && ` ${say('· {attempts} attempts', { attempts: message.attempts })}`}
          {message.outcome && ` · ${outcomeWords[message.outcome]}`}
          {message.nextTryOn &&
            ` ${say('· again on {nextTryOn}', { nextTryOn: dateWords(message.nextTryOn) })}`}
        </p>
        {message.words && (
          <Alert
            color={state === 'failed' ? 'red' : 'orange'}
            variant="outline"
            title={
              state === 'failed'
                ? say('Not sent')
                : state === 'withdrawn'
                  ? say('Withdrawn')
                  : say('It waits')
            }
          >
            {message.words}
            {message.notBeforeAt !== null &&
              state === 'approved' &&
              ` ${say('Not before {notBeforeAt}.', { notBeforeAt: longWords(message.notBeforeAt, zone) })}`}
          </Alert>
        )}
        {message.unanswered > 0 && (
          <Alert color="orange" variant="outline" title={say('May have arrived twice')}>
            {say(
              '{unanswered, plural, one {One attempt} other {{unanswered} attempts}} ended without an answer: the owner may have had a copy each time.',
              { unanswered: message.unanswered },
            )}
          </Alert>
        )}
        {message.unfilled.length > 0 && (
          <Alert color="orange" variant="outline" title={say('A field is not filled')}>
            {say(
              'Nothing was found for {unfilled}: ____ stands in its place. It cannot be approved as it is: edit the words.',
              { unfilled: message.unfilled.map(name => `{{${name}}}`).join(', ') },
            )}{' '}
            {message.unfilled.some(name => name.startsWith('shop')) && (
              <Say
                text="What is missing of the shop is entered in {link}."
                values={{
                  link: (
                    <Link to="/settings/$section" params={{ section: 'shop' }}>
                      {say('its settings')}
                    </Link>
                  ),
                }}
              />
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
            <article className={styles.letter} lang={message.language} aria-label={say('The words')}>
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
            onClick={() => approving.save(key, () => onDone(say('✓ {plate} approved.', { plate })))}
          >
            {say('Approve')}
          </Button>
        )}
        {state === 'failed' && (
          <Button
            loading={retrying.busy}
            onClick={() =>
              retrying.save(key, () =>
                onDone(say('✓ {plate} is tried again with the next sending.', { plate })),
              )
            }
          >
            {say('Try again')}
          </Button>
        )}
        <Button variant="default" onClick={onEdit}>
          {say('Edit the words')}
        </Button>
        <Button
          variant="default"
          loading={refusing.busy}
          onClick={() =>
            refusing.save(key, () => onDone(say('– {plate} is not written to about this visit.', { plate })))
          }
        >
          {state === 'draft' ? say('Refuse') : say('Withdraw')}
        </Button>
        {channel === 'email' && (
          <Button
            variant="subtle"
            loading={testing.busy}
            onClick={() =>
              testing.save({ id }, result => setTested(`${result.sent ? '✓' : '✕'} ${result.words}`))
            }
          >
            {say('Send it to ourselves')}
          </Button>
        )}
        {channel === 'letter' && (
          <DocumentButton variant="subtle" path={`/documents/letter/${id}.pdf`}>
            {say('Look at the PDF')}
          </DocumentButton>
        )}
      </Group>
      <div role="status">{tested}</div>
      <Refused of={approving.error ?? refusing.error ?? retrying.error ?? testing.error} />
    </>
  )
}
