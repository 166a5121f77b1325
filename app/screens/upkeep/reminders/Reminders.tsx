import { Alert } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import type { MessageView } from '../../../../main/api/views.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { FailedPlans } from '../FailedPlans.tsx'
import styles from '../Upkeep.module.css'
import { BatchActs } from './BatchActs.tsx'
import { BounceForm } from './BounceForm.tsx'
import { MessageCard } from './MessageCard.tsx'
import { MessageList } from './MessageList.tsx'
import { NotWritten } from './NotWritten.tsx'
import { Outbox } from './Outbox.tsx'

/** The morning's messages: reviewed one by one or as a whole, sent, and what became of each. */
export function Reminders({ id }: SectionProps) {
  const navigate = useNavigate()
  const query = useQuery({ ...trpc.reminders.batch.queryOptions(), refetchInterval: 30_000 })
  const [said, setSaid] = useState<string | null>(null)
  const batch = query.data
  if (query.error) return <Alert color="red">{faultOf(query.error).message}</Alert>
  if (!batch) return <p className={styles.soft}>Looking them up …</p>
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
      <div className={styles.heading}>
        <h1>Reminders</h1>
        <BatchActs batch={batch} onSaid={setSaid} />
      </div>
      <p className={styles.law} role="note">
        {batch.lawNote}
      </p>
      <Outbox batch={batch} />
      <div role="status" aria-label="Last act" className={styles.acts}>
        {said}
      </div>
      {chosen ? (
        <div className={styles.side}>
          <MessageList messages={messages} chosenId={chosen.id} />
          <MessageCard key={chosen.id} message={chosen} onDone={words => next(chosen, words)} />
        </div>
      ) : (
        <p className={styles.empty}>
          Nothing to review. Each morning the visits that come due are written about here, each with two times
          that are really free and held for the owner; nothing goes out before you have looked at it.
        </p>
      )}
      <NotWritten lines={batch.notWritten} />
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
