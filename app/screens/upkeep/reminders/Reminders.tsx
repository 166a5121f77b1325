import { useQuery } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import type { BatchView, MessageView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import pieces from '../../../parts/pieces.module.css'
import { RowLinks } from '../../../parts/RowLinks.tsx'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { Table } from '../../../parts/Table.tsx'
import { Waiting } from '../../../parts/Waiting.tsx'
import { ActsBar } from '../ActsBar.tsx'
import { Behind } from '../Behind.tsx'
import { FailedPlans } from '../FailedPlans.tsx'
import styles from '../Upkeep.module.css'
import { channelWords, outcomeWords, stateSigns, stateWords } from '../words.ts'
import { BatchActs } from './BatchActs.tsx'
import { BounceForm } from './BounceForm.tsx'
import { MessageCard } from './MessageCard.tsx'
import { Outbox } from './Outbox.tsx'
import own from './Reminders.module.css'
import { Writing } from './Writing.tsx'

/** The morning's messages: reviewed one by one or as a whole, sent, and what became of each. */
export function Reminders({ id }: SectionProps) {
  const navigate = useNavigate()
  const query = useQuery({
    ...trpc.reminders.batch.queryOptions(),
    refetchInterval: ({ state }) => (state.data?.writing.working ? 2_000 : 30_000),
  })
  const [said, setSaid] = useState<string | null>(null)
  const batch = query.data
  if (!batch) return <Waiting error={query.error} words={say('Looking them up')} />
  const { messages } = batch
  const chosen = messages.find(message => message.id === id) ?? messages[0]
  // On to the next one to review; where there is none, the one just done stays in sight.
  const next = (done: MessageView, words: string) => {
    setSaid(words)
    const to = nextDraft(messages, done.id) ?? done.id
    void navigate({ to: '/upkeep/$section/$id', params: { section: 'reminders', id: to } })
  }
  return (
    <>
      <ScreenTitle title={say('Reminders')}>
        <BatchActs batch={batch} onSaid={setSaid} />
      </ScreenTitle>
      <p className={styles.law} role="note">
        {batch.lawNote}
      </p>
      <Outbox batch={batch} />
      <Behind plans={batch.behind} />
      <Writing of={batch.writing} />
      <ActsBar>{said}</ActsBar>
      {chosen ? (
        <div className={pieces.side}>
          <RowLinks
            label={say('Messages')}
            to="/upkeep/$section/$id"
            section="reminders"
            rows={messages.map(rowOf)}
            current={chosen.id}
          />
          <MessageCard
            key={chosen.id}
            message={chosen}
            opened={chosen.id === id}
            onDone={words => next(chosen, words)}
          />
        </div>
      ) : (
        <p className={pieces.empty}>
          {say(
            'Nothing to review. Each morning the visits that come due are written about here, each with two times that are really free and held for the owner; nothing goes out before you have looked at it.',
          )}
        </p>
      )}
      {batch.more && (
        <p className={pieces.soft}>
          {say('The first {messages} are shown; the others follow as these are done.', {
            messages: messages.length,
          })}
        </p>
      )}
      <NotWritten lines={batch.notWritten} count={batch.notWrittenCount} />
      <FailedPlans plans={batch.failed} />
      <BounceForm />
    </>
  )
}

/** The first draft after a message, or before it where none follows. */
function nextDraft(messages: readonly MessageView[], id: string): string | undefined {
  const at = messages.findIndex(message => message.id === id)
  const around = [...messages.slice(at + 1), ...messages.slice(0, Math.max(0, at))]
  return around.find(message => message.state === 'draft')?.id
}

/** A message in the list of the batch. */
function rowOf({ id, plate, customerName, channel, title, state, ...message }: MessageView) {
  return {
    id,
    title: (
      <>
        {plate} <span className={own.name}>{customerName}</span>
      </>
    ),
    about: (
      <>
        {channelWords[channel]}, {title}
        <span className={own.state} data-state={state}>
          {stateSigns[state]} {stateWords[state]}
          {message.outcome && `, ${outcomeWords[message.outcome]}`}
          {message.unanswered > 0 && say(', may have arrived twice')}
          {message.unfilled.length > 0 && state === 'draft' && say(', a field is not filled')}
        </span>
      </>
    ),
  }
}

/** Who is due and is not written to, and why: usually for the desk to mend. */
function NotWritten({ lines, count }: { lines: BatchView['notWritten']; count: number }) {
  if (lines.length === 0) return null
  return (
    <Card
      title={say('Due, and not written to')}
      about={
        count > lines.length ? say('the first {lines} of {count}', { lines: lines.length, count }) : count
      }
    >
      <Table
        rows={lines}
        keyOf={line => `${line.planId} ${line.ruleOn}`}
        columns={[
          { head: say('Car'), cell: line => line.plate, small: line => line.customerName },
          { head: say('Visit'), cell: line => line.title },
          { head: say('Why not'), cell: line => line.why },
        ]}
      />
    </Card>
  )
}
