import { Button } from '@mantine/core'
import { notifications } from '@mantine/notifications'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { JobStepView, JobView } from '../../../main/api/views.ts'
import { faultOf, trpc } from '../../data/trpc.ts'
import { useOneAtATime } from '../../data/useOneAtATime.ts'
import { AskDialog } from '../../parts/AskDialog.tsx'
import type { Happened } from './useHappened.ts'

interface Props {
  job: JobView
  step: JobStepView
  happened: Happened
  disabled: boolean
}

/** Starts a step. A coat that the bay's conditions do not suit is asked about first; the reason is kept and printed. */
export function StartButton({ job, step, happened, disabled }: Props) {
  const queries = useQueryClient()
  const [warning, setWarning] = useState<string | null>(null)
  const start = useOneAtATime(
    useMutation({
      ...trpc.jobs.startStep.mutationOptions(),
      onSuccess: () => {
        setWarning(null)
        happened.clear()
        queries.invalidateQueries()
      },
      onError: error => {
        const fault = faultOf(error)
        if (fault.reason === 'conditions') return setWarning(fault.message)
        queries.invalidateQueries()
        notifications.show({ title: 'Not done', message: fault.message, color: 'red', autoClose: 12_000 })
      },
    }),
  )
  const key = { id: job.id, version: job.version, position: step.position }
  return (
    <>
      <Button
        size="xs"
        disabled={disabled || start.isPending}
        onClick={() => happened.take(time => start.mutate({ ...key, ...time }))}
        aria-label={`Start ${step.name}`}
      >
        Start
      </Button>
      {warning && (
        <AskDialog
          title={`Start ${step.name} in these conditions?`}
          words={`${warning} A fresh reading can be typed in under Conditions.`}
          label="Why it is begun all the same"
          action="Start all the same"
          busy={start.isPending}
          onClose={() => setWarning(null)}
          onSay={reason => happened.take(time => start.mutate({ ...key, ...time, reason }))}
        />
      )}
    </>
  )
}
