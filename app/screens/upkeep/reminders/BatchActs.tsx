import { Button, Group } from '@mantine/core'
import type { BatchView, SendRunView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useAct, useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { approvedWords } from '../words.ts'

interface Props {
  batch: BatchView
  onSaid(words: string): void
}

/** What is done with the batch as a whole: write it, approve it, send it. */
export function BatchActs({ batch, onSaid }: Props) {
  const preparing = useAct(trpc.reminders.prepare.mutationOptions())
  const approving = useSaving(trpc.reminders.approveAll.mutationOptions())
  const sending = useAct(trpc.reminders.send.mutationOptions())
  const { drafts, readyMails, waiting, writing } = batch
  return (
    <>
      <Group gap="sm" className={pieces.end}>
        {waiting > 0 && !writing.working && (
          <Button loading={preparing.busy} onClick={() => preparing.run()}>
            {say('Write today’s reminders ({waiting})', { waiting })}
          </Button>
        )}
        {drafts > 0 && (
          <Button
            variant="default"
            loading={approving.busy}
            onClick={() => approving.save({}, done => onSaid(approvedWords(done)))}
          >
            {say('{drafts, plural, one {Approve it} other {Approve all {drafts}}}', { drafts })}
          </Button>
        )}
        {readyMails > 0 && (
          <Button loading={sending.busy} onClick={() => sending.run(run => onSaid(runWords(run)))}>
            {say('Send what is approved ({readyMails})', { readyMails })}
          </Button>
        )}
      </Group>
      <Refused of={preparing.error ?? approving.error ?? sending.error} />
    </>
  )
}

function runWords({ sent, failed, waiting, words }: SendRunView): string {
  const parts = [
    say('{sent} sent', { sent }),
    failed > 0 && say('{failed} failed', { failed }),
    waiting > 0 && say('{waiting} wait', { waiting }),
  ]
  return [`${failed > 0 ? '✕' : '✓'} ${parts.filter(Boolean).join(', ')}.`, ...words].join(' ')
}
