import { Button } from '@mantine/core'
import { useState } from 'react'
import type { JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { AskDialog } from '../../parts/AskDialog.tsx'
import { longWords } from '../../parts/time.ts'
import type { Happened } from './useHappened.ts'
import { useJobAct } from './useJobAct.ts'

/** The car goes home; before its profile allows it, or with steps not finished, somebody says why. */
export function HandOver({ job, happened }: { job: JobView; happened: Happened }) {
  const [asking, setAsking] = useState(false)
  const handOver = useJobAct(trpc.jobs.handOver.mutationOptions(), () => {
    happened.clear()
    setAsking(false)
  })
  const undone = job.steps.some(step => step.kind === 'work' && step.state !== 'done')
  const open = job.checks.filter(check => check.doneBy === null).map(check => check.words)
  const tooSoon = undone || (happened.at ?? job.nowAt) < job.safeAt
  const early = tooSoon || open.length > 0
  const safe = longWords(job.safeAt, job.zone, job.nowAt)
  const leave = (reason?: string) =>
    happened.take(time =>
      handOver.mutate({ id: job.id, version: job.version, ...time, ...(reason !== undefined && { reason }) }),
    )
  return (
    <>
      <Button
        variant={early ? 'default' : 'filled'}
        onClick={() => (early ? happened.take(() => setAsking(true)) : leave())}
        loading={handOver.isPending}
      >
        {say('Hand over')}
      </Button>
      {asking && (
        <AskDialog
          title={
            undone
              ? say('Hand over with steps not finished?')
              : !tooSoon
                ? say('Hand over with checks not ticked off?')
                : say('Hand over before the profile’s minimum?')
          }
          words={
            !tooSoon
              ? say('Not ticked off: {open}. Handing over all the same needs a reason, which is kept.', {
                  open: open.join('; '),
                })
              : job.coated
                ? say(
                    'By its cure profile the earliest pick-up is {safe}. The data sheet decides. Handing over earlier needs a reason, which is kept.',
                    { safe },
                  )
                : say(
                    'Its work is planned until {safe}. Handing over before it is done needs a reason, which is kept.',
                    { safe },
                  )
          }
          label={say('Reason')}
          action={say('Hand over anyway')}
          busy={handOver.isPending}
          onClose={() => setAsking(false)}
          onSay={leave}
        />
      )}
    </>
  )
}
