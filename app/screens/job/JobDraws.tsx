import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { JobView } from '../../../main/api/views.ts'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Said } from '../../parts/Said.tsx'
import { StepCard } from '../closeOfDay/StepCard.tsx'

/** What the finished steps of this job drew from the shelf, to be confirmed at once or at the close of day. */
export function JobDraws({ job }: { job: JobView }) {
  const [said, setSaid] = useState<string[]>([])
  const date = dateOf(job.nowAt, job.zone)
  const finished = job.steps.some(step => step.kind === 'work' && step.state === 'done')
  const close = useQuery({ ...trpc.shelf.closeOfDay.queryOptions({ date }), enabled: finished }).data
  const steps = (close?.stepsToConfirm ?? []).filter(step => step.jobId === job.id)
  if (steps.length + said.length === 0) return null
  return (
    <Card title={say('Confirm usage')}>
      <Said words={said} />
      {steps.map(step => (
        <StepCard
          quiet
          key={step.position}
          step={step}
          zone={job.zone}
          date={date}
          onDone={({ words }) => setSaid(words)}
        />
      ))}
    </Card>
  )
}
