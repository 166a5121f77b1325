import { Button } from '@mantine/core'
import { useState } from 'react'
import type { JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { AskDialog } from '../../parts/AskDialog.tsx'
import { useJobAct } from './useJobAct.ts'

/** Which of the two rules the car leaves by, and the way from one to the other. */
export function Cover({ job }: { job: JobView }) {
  const [asking, setAsking] = useState(false)
  const cover = useJobAct(trpc.jobs.cover.mutationOptions(), () => setAsking(false))
  const key = { id: job.id, version: job.version }
  if (job.coveredBy !== null)
    return (
      <>
        {say('Leaves under cover, confirmed by {coveredBy}', { coveredBy: job.coveredBy })}{' '}
        {job.can.promise && (
          <Button
            size="compact-xs"
            variant="default"
            loading={cover.isPending}
            onClick={() => cover.mutate({ ...key, by: null })}
          >
            {say('Take that back')}
          </Button>
        )}
      </>
    )
  return (
    <>
      {say('Stays here until it may get wet')}{' '}
      {job.can.promise && (
        <Button size="compact-xs" variant="default" onClick={() => setAsking(true)}>
          {say('It leaves under cover')}
        </Button>
      )}
      {asking && (
        <AskDialog
          title={say('Covered transport and storage')}
          words={say(
            'Only if somebody takes responsibility: the car must travel and stand under cover until it may get wet. The promise stays until you give a new one.',
          )}
          label={say('Confirmed by')}
          action={say('Write it down')}
          busy={cover.isPending}
          onClose={() => setAsking(false)}
          onSay={by => cover.mutate({ ...key, by })}
        />
      )}
    </>
  )
}
