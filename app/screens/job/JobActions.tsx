import { Button } from '@mantine/core'
import { useState } from 'react'
import type { JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { AskDialog } from '../../parts/AskDialog.tsx'
import { DocumentButton } from '../../parts/DocumentButton.tsx'
import { FreedPlace } from './FreedPlace.tsx'
import { HandOver } from './HandOver.tsx'
import { nextAct } from './nextAct.ts'
import { OtherwiseMenu } from './otherwise/OtherwiseMenu.tsx'
import { PromiseDialog } from './PromiseDialog.tsx'
import type { Happened } from './useHappened.ts'
import { useJobAct } from './useJobAct.ts'

/** What may be done with the whole job besides its next act. */
export function JobActions({ job, happened }: { job: JobView; happened: Happened }) {
  // With the job as it was when it was asked.
  const [asking, setAsking] = useState<{ what: 'cancel' | 'promise'; seen: JobView } | null>(null)
  const close = () => setAsking(null)
  const cancel = useJobAct(trpc.jobs.cancel.mutationOptions(), close)
  return (
    <>
      {job.can.handOver && nextAct(job)?.kind !== 'handOver' && <HandOver job={job} happened={happened} />}
      {job.can.promise && (
        <Button variant="default" onClick={() => setAsking({ what: 'promise', seen: job })}>
          {say('New promise')}
        </Button>
      )}
      {job.can.cancel && (
        <Button variant="default" onClick={() => setAsking({ what: 'cancel', seen: job })}>
          {say('Cancel the job')}
        </Button>
      )}
      <OtherwiseMenu job={job} />
      <FreedPlace job={job} />
      <DocumentButton path={`/documents/work-order/${job.id}.pdf`}>{say('Work order')}</DocumentButton>
      {asking?.what === 'cancel' && (
        <AskDialog
          title={say('Cancel job {number}?', { number: job.number })}
          words={say('Its place on the board becomes free for others. The record stays.')}
          label={say('Reason')}
          action={say('Cancel the job')}
          busy={cancel.isPending}
          onClose={close}
          onSay={reason => cancel.mutate({ id: job.id, version: asking.seen.version, reason })}
        />
      )}
      {asking?.what === 'promise' && <PromiseDialog job={asking.seen} onClose={close} />}
    </>
  )
}
