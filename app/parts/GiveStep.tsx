import { Group, Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { JobStepView, JobView } from '../../main/api/views.ts'
import { say } from '../../main/domain/language/index.ts'
import { useSaving } from '../data/saving.ts'
import { trpc } from '../data/trpc.ts'
import { Dialog } from './form/Dialog.tsx'
import { Refused } from './form/Refused.tsx'
import pieces from './pieces.module.css'
import { RowButton } from './RowButton.tsx'
import { nearWords } from './time.ts'

interface Props {
  jobId: string
  /** Whom it is to go to, where they were dragged onto the car. */
  toId?: string | undefined
  onClose(): void
}

/** The steps of a car that somebody has to do, each to be given to another who can. */
export function GiveStep({ jobId, toId, onClose }: Props) {
  const job = useQuery(trpc.jobs.get.queryOptions({ id: jobId })).data
  const steps = job?.steps.filter(step => step.can.give) ?? []
  return (
    <Dialog
      title={job ? say('Who works on {plate}', { plate: job.vehicle.plate }) : say('Who works on it')}
      size="lg"
      onClose={onClose}
    >
      {job && steps.length === 0 && (
        <p className={pieces.soft}>{say('Nothing of it is left that needs somebody.')}</p>
      )}
      {job && (
        <div className={pieces.column}>
          {steps.map(step => (
            <GiveRow key={step.position} job={job} step={step} toId={toId} />
          ))}
        </div>
      )}
    </Dialog>
  )
}

function GiveRow({ job, step, toId }: { job: JobView; step: JobStepView; toId: string | undefined }) {
  const crew = useQuery(trpc.crew.list.queryOptions()).data ?? []
  const give = useSaving(trpc.jobs.give.mutationOptions())
  const first = step.crew[0]?.id ?? ''
  const [to, setTo] = useState<string | null>(toId ?? null)
  // Once somebody is chosen it is from whom it was then: another window may give the step away meanwhile.
  const [from, setFrom] = useState<string | null>(toId ? first : null)
  const fromId = from ?? first
  const able = crew.filter(
    ({ id, skills }) =>
      !step.crew.some(each => each.id === id) && (step.skill === null || skills.includes(step.skill)),
  )
  const chosen = able.find(({ id }) => id === to)
  const named = (people: readonly { id: string; name: string }[]) =>
    people.map(({ id, name }) => ({ value: id, label: name }))
  return (
    <fieldset className={pieces.card} aria-label={step.name}>
      <p>
        <b>{step.name}</b>{' '}
        {say('{bay}, {from} to {to}', {
          bay: step.bayName,
          from: nearWords(step.startAt, job.zone, job.nowAt),
          to: nearWords(step.endAt, job.zone, job.nowAt),
        })}
      </p>
      <Refused of={give.error} />
      <Group align="flex-end" gap="0.75rem" wrap="nowrap">
        <Select
          label={step.state === 'running' ? say('Handed on from') : say('From||the person')}
          data={named(step.crew)}
          value={fromId}
          allowDeselect={false}
          onChange={setFrom}
        />
        <Select
          label={say('To||the person')}
          data={named(able)}
          value={chosen?.id ?? null}
          onChange={id => {
            setTo(id)
            setFrom(fromId)
          }}
          placeholder={able.length === 0 ? say('Nobody else can do it') : say('Choose somebody')}
        />
        <RowButton
          does={say('Give it')}
          of={step.name}
          disabled={!chosen || give.busy}
          onClick={() =>
            chosen &&
            give.save(
              {
                id: job.id,
                version: job.version,
                position: step.position,
                fromId,
                toId: chosen.id,
              },
              () => {
                setTo(null)
                setFrom(null)
              },
            )
          }
        />
      </Group>
    </fieldset>
  )
}
