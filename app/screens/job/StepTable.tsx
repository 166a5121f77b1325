import { useState } from 'react'
import type { JobStepView, JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { GiveStep } from '../../parts/GiveStep.tsx'
import { HeadRow } from '../../parts/HeadRow.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { HazardMark } from '../../parts/shelf/HazardMark.tsx'
import table from '../../parts/table.module.css'
import { durationWords, nearWords } from '../../parts/time.ts'
import styles from './Job.module.css'
import { useJobAct } from './useJobAct.ts'

/** The steps in order, as they were and as they are planned; the last time can be taken back. */
export function StepTable({ job }: { job: JobView }) {
  const [giving, setGiving] = useState(false)
  const reopen = useJobAct(trpc.jobs.reopenStep.mutationOptions())
  const when = (at: number) => nearWords(at, job.zone, job.nowAt)
  /** As it was, or as it is planned, told apart by more than colour. */
  const moment = (actual: number | null, planned: number) =>
    actual === null ? <span className={pieces.soft}>≈ {when(planned)}</span> : <b>{when(actual)}</b>
  return (
    <section className={pieces.card}>
      <h2>{say('Steps')}</h2>
      <table className={table.table}>
        <HeadRow
          columns={[
            say('Step'),
            say('Bay'),
            say('Crew'),
            say('From'),
            say('To'),
            say('State'),
            say('(What may be done)'),
          ]}
        />
        <tbody>
          {job.steps.map(step => {
            const key = { id: job.id, version: job.version, position: step.position }
            return (
              <tr key={step.position} data-hold={step.kind === 'hold'} className={styles.step}>
                <td>
                  {step.name}
                  {step.productName && step.kind === 'work' && <small> {step.productName}</small>}
                  {step.productId && step.kind === 'work' && <HazardMark productId={step.productId} />}
                  <small> {durationWords(step.minutes)}</small>
                  {step.stage === 'coat' && step.kind === 'work' && (
                    <small> {say('· level and check each panel under the lamp while it is wet')}</small>
                  )}
                </td>
                <td>
                  {step.bayName}
                  {step.moved && (
                    <small>
                      {' '}
                      {say('to {bayName} {at}', { bayName: step.moved.bayName, at: when(step.moved.at) })}
                    </small>
                  )}
                </td>
                <td>
                  {step.crew
                    .map(({ name, helps }) =>
                      helps
                        ? say('{name} helps {from} to {to}', {
                            name,
                            from: when(helps.from),
                            to: when(helps.to),
                          })
                        : name,
                    )
                    .join(', ')}
                  {step.passes.map(({ name, untilAt }) => (
                    <small key={`${name} ${untilAt}`}>
                      {' '}
                      {say('{name} until {untilAt}', { name, untilAt: when(untilAt) })}
                    </small>
                  ))}
                </td>
                <td>{moment(step.actualStartAt, step.startAt)}</td>
                <td>{moment(step.actualEndAt, step.endAt)}</td>
                <td>{stateOf(step)}</td>
                <td>
                  {step.can.give && (
                    <RowButton
                      does={say('Give to …')}
                      of={step.name}
                      size="xs"
                      onClick={() => setGiving(true)}
                    />
                  )}
                  {step.can.reopen && (
                    <RowButton
                      does={say('Take back')}
                      of={say('the last time of {name}', { name: step.name })}
                      size="xs"
                      disabled={reopen.isPending}
                      onClick={() => reopen.mutate(key)}
                    />
                  )}
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
      {giving && <GiveStep jobId={job.id} onClose={() => setGiving(false)} />}
    </section>
  )
}

function stateOf(step: JobStepView): string {
  if (step.state === 'done') return say('done ✓')
  if (step.state === 'running') return step.kind === 'hold' ? say('curing||now') : say('running')
  return say('planned')
}
