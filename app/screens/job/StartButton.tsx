import { Button } from '@mantine/core'
import { useState } from 'react'
import type { JobStepView, JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { faultOf, trpc } from '../../data/trpc.ts'
import { AskDialog } from '../../parts/AskDialog.tsx'
import type { Happened } from './useHappened.ts'
import { sayNotDone } from './useJobAct.ts'

interface Props {
  job: JobView
  step: JobStepView
  happened: Happened
}

/** Starts a step; what is in the way is asked about. A coat that the bay's conditions do not suit is asked about first; the reason is kept and printed. */
export function StartButton({ job, step, happened }: Props) {
  const [warning, setWarning] = useState<string | null>(null)
  const { save, busy } = useSaving(trpc.jobs.startStep.mutationOptions(), {
    onRefused: refused => {
      const { reason, message } = faultOf(refused)
      if (reason === 'conditions') setWarning(message)
      else sayNotDone(refused)
    },
  })
  const start = (input: Parameters<typeof save>[0]) =>
    save(input, () => {
      setWarning(null)
      happened.clear()
    })
  const key = { id: job.id, version: job.version, position: step.position }
  return (
    <>
      <Button loading={busy} onClick={() => happened.take(time => start({ ...key, ...time }))}>
        {say('Start {name}', { name: step.name })}
      </Button>
      {warning && (
        <AskDialog
          title={say('Start {name} in these conditions?', { name: step.name })}
          words={say('{warning} A fresh reading can be typed in under Conditions.', { warning })}
          label={say('Why it is started anyway')}
          action={say('Start anyway')}
          busy={busy}
          onClose={() => setWarning(null)}
          onSay={reason => happened.take(time => start({ ...key, ...time, reason, accepted: true }))}
        />
      )}
    </>
  )
}
