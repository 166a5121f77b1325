import { Button, Group } from '@mantine/core'
import type { BatchView, SendRunView } from '../../../../main/api/views.ts'
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
            Write today’s reminders ({waiting})
          </Button>
        )}
        {drafts > 0 && (
          <Button
            variant="default"
            loading={approving.busy}
            onClick={() => approving.save({}, done => onSaid(approvedWords(done)))}
          >
            {drafts === 1 ? 'Approve it' : `Approve all ${drafts}`}
          </Button>
        )}
        {readyMails > 0 && (
          <Button loading={sending.busy} onClick={() => sending.run(run => onSaid(runWords(run)))}>
            Send what is approved ({readyMails})
          </Button>
        )}
      </Group>
      <Refused of={preparing.error ?? approving.error ?? sending.error} />
    </>
  )
}

function runWords({ sent, failed, waiting, words }: SendRunView): string {
  const parts = [`${sent} sent`, failed > 0 && `${failed} failed`, waiting > 0 && `${waiting} wait`]
  return [`${failed > 0 ? '✕' : '✓'} ${parts.filter(Boolean).join(', ')}.`, ...words].join(' ')
}
