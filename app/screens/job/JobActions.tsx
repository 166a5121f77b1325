import { Button, Group } from '@mantine/core'
import { useState } from 'react'
import type { JobView } from '../../../main/api/views.ts'
import { trpc } from '../../data/trpc.ts'
import { AskDialog } from '../../parts/AskDialog.tsx'
import { longWords } from '../../parts/time.ts'
import { PromiseDialog } from './PromiseDialog.tsx'
import type { Happened } from './useHappened.ts'
import { useJobAct } from './useJobAct.ts'

type Asking = 'handOver' | 'cancel' | 'promise' | null

/** What may be done with the whole job now. */
export function JobActions({ job, happened }: { job: JobView; happened: Happened }) {
  const [asking, setAsking] = useState<Asking>(null)
  const close = () => setAsking(null)
  const confirm = useJobAct(trpc.booking.confirm.mutationOptions())
  const arrive = useJobAct(trpc.jobs.arrive.mutationOptions(), happened.clear)
  const handOver = useJobAct(trpc.jobs.handOver.mutationOptions(), () => {
    happened.clear()
    close()
  })
  const cancel = useJobAct(trpc.jobs.cancel.mutationOptions(), close)
  const key = { id: job.id, version: job.version }
  const undone = job.steps.some(step => step.kind === 'work' && step.state !== 'done')
  const open = job.checks.some(check => check.doneBy === null)
  const early = undone || open || (happened.at ?? job.nowAt) < job.safeAt
  const leave = (reason?: string) =>
    happened.take(time => handOver.mutate({ ...key, ...time, ...(reason !== undefined && { reason }) }))
  return (
    <Group gap={8} ml="auto">
      {job.can.confirm && (
        <Button
          onClick={() => confirm.mutate({ jobId: job.id, version: job.version })}
          loading={confirm.isPending}
        >
          Confirm
        </Button>
      )}
      {job.can.arrive && (
        <Button
          onClick={() => happened.take(time => arrive.mutate({ ...key, ...time }))}
          loading={arrive.isPending}
        >
          Car is here
        </Button>
      )}
      {job.can.handOver && (
        <Button
          variant={early ? 'default' : 'filled'}
          onClick={() => (early ? happened.take(() => setAsking('handOver')) : leave())}
          loading={handOver.isPending}
        >
          Hand over
        </Button>
      )}
      {job.can.promise && (
        <Button variant="default" onClick={() => setAsking('promise')}>
          New promise
        </Button>
      )}
      {job.can.cancel && (
        <Button variant="default" onClick={() => setAsking('cancel')}>
          Cancel the job
        </Button>
      )}
      {asking === 'handOver' && (
        <AskDialog
          title={
            undone
              ? 'Hand over with steps not finished?'
              : open
                ? 'Hand over with checks not ticked off?'
                : 'Hand over before the profile’s minimum?'
          }
          words={
            job.coated
              ? `By its cure profile the earliest pick-up is ${longWords(job.safeAt, job.zone, job.nowAt)}. The data sheet decides. Handing over earlier needs a reason, which is kept.`
              : `Its work is planned until ${longWords(job.safeAt, job.zone, job.nowAt)}. Handing over before it is done needs a reason, which is kept.`
          }
          label="Reason"
          action="Hand over all the same"
          busy={handOver.isPending}
          onClose={close}
          onSay={leave}
        />
      )}
      {asking === 'cancel' && (
        <AskDialog
          title={`Cancel job ${job.number}?`}
          words="Its place on the board becomes free for others. The record stays."
          label="Reason"
          action="Cancel the job"
          busy={cancel.isPending}
          onClose={close}
          onSay={reason => cancel.mutate({ ...key, reason })}
        />
      )}
      {asking === 'promise' && <PromiseDialog job={job} onClose={close} />}
    </Group>
  )
}
