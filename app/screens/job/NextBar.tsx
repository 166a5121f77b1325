import { Button } from '@mantine/core'
import { useState } from 'react'
import type { JobStepView, JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import pieces from '../../parts/pieces.module.css'
import { nearWords } from '../../parts/time.ts'
import { HandOver } from './HandOver.tsx'
import { HappenedInput } from './HappenedInput.tsx'
import styles from './Job.module.css'
import { nextAct, nowWords } from './nextAct.ts'
import { StartButton } from './StartButton.tsx'
import type { Happened } from './useHappened.ts'
import { useJobAct } from './useJobAct.ts'

/** What happens now, the next act as one button, and the time for what happened earlier. */
export function NextBar({ job, happened }: { job: JobView; happened: Happened }) {
  const [earlier, setEarlier] = useState(false)
  const when = (at: number) => nearWords(at, job.zone, job.nowAt)
  const { lead, now, after } = nowWords(job, when)
  const next = nextAct(job)
  const timed = next !== null && next.kind !== 'confirm' && next.kind !== 'wait'
  return (
    <div className={styles.next}>
      <p>
        {lead && <span className={pieces.soft}>{lead}</span>} <b>{now}</b>{' '}
        <span className={pieces.soft}>{after}</span>
      </p>
      <div className={styles.nextActs}>
        {timed &&
          (earlier || happened.text !== '' ? (
            <HappenedInput happened={happened} zone={job.zone} />
          ) : (
            <Button variant="default" onClick={() => setEarlier(true)}>
              {say('It happened earlier…')}
            </Button>
          ))}
        <NextButton job={job} happened={happened} />
      </div>
    </div>
  )
}

function NextButton({ job, happened }: { job: JobView; happened: Happened }) {
  const confirm = useJobAct(trpc.booking.confirm.mutationOptions())
  const arrive = useJobAct(trpc.jobs.arrive.mutationOptions(), happened.clear)
  const key = { id: job.id, version: job.version }
  const next = nextAct(job)
  if (next === null) return null
  switch (next.kind) {
    case 'confirm':
      return (
        <Button
          loading={confirm.isPending}
          onClick={() => confirm.mutate({ jobId: job.id, version: job.version })}
        >
          {say('Confirm')}
        </Button>
      )
    case 'arrive':
      return (
        <Button
          loading={arrive.isPending}
          onClick={() => happened.take(time => arrive.mutate({ ...key, ...time }))}
        >
          {say('Car is here')}
        </Button>
      )
    case 'start':
      return <StartButton job={job} step={next.step} happened={happened} />
    case 'finish':
      return <FinishButtons job={job} step={next.step} happened={happened} />
    case 'wait':
      return (
        <Button disabled>
          {say('Start {name} at {from}', {
            name: next.step.name,
            from: nearWords(next.from, job.zone, job.nowAt),
          })}
        </Button>
      )
    case 'handOver':
      return <HandOver job={job} happened={happened} />
  }
}

interface StepProps {
  job: JobView
  step: JobStepView
  happened: Happened
}

/** A step is done: with what its recipe says in the same act, or without, where it used something else. */
function FinishButtons({ job, step, happened }: StepProps) {
  const finish = useJobAct(trpc.jobs.finishStep.mutationOptions(), happened.clear)
  const key = { id: job.id, version: job.version, position: step.position }
  const done = (asPlanned: boolean) =>
    happened.take(time => finish.mutate({ ...key, ...time, ...(asPlanned && { asPlanned }) }))
  const used = { name: step.name, uses: step.uses[0] ?? '' }
  if (step.uses.length === 0)
    return (
      <Button loading={finish.isPending} onClick={() => done(false)}>
        {say('Finish {name}', { name: step.name })}
      </Button>
    )
  return (
    <>
      <Button variant="default" disabled={finish.isPending} onClick={() => done(false)}>
        {say('Used something else')}
      </Button>
      <Button
        loading={finish.isPending}
        title={say('Takes {uses} off the shelf', { uses: step.uses.join(say(' and ')) })}
        onClick={() => done(true)}
      >
        {step.uses.length > 1
          ? say('Finish {name}, used {uses} + {more}', { ...used, more: step.uses.length - 1 })
          : say('Finish {name}, used {uses}', used)}
      </Button>
    </>
  )
}
