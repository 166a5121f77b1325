import { Button, Group, Table } from '@mantine/core'
import type { JobStepView, JobView } from '../../../main/api/views.ts'
import { trpc } from '../../data/trpc.ts'
import { HazardMark } from '../../parts/shelf/HazardMark.tsx'
import { durationWords, nearWords } from '../../parts/time.ts'
import { HappenedInput } from './HappenedInput.tsx'
import styles from './Job.module.css'
import { StartButton } from './StartButton.tsx'
import type { Happened } from './useHappened.ts'
import { useJobAct } from './useJobAct.ts'

/** The steps in order, with start and finish taken as they happen. */
export function StepTable({ job, happened }: { job: JobView; happened: Happened }) {
  const finish = useJobAct(trpc.jobs.finishStep.mutationOptions(), happened.clear)
  const reopen = useJobAct(trpc.jobs.reopenStep.mutationOptions())
  const busy = finish.isPending || reopen.isPending
  return (
    <section className={styles.card}>
      <div className={styles.stepsHead}>
        <h2>Steps</h2>
        {(job.can.arrive || job.can.handOver) && <HappenedInput happened={happened} zone={job.zone} />}
      </div>
      <Table verticalSpacing="xs">
        <Table.Thead>
          <Table.Tr>
            <Table.Th>Step</Table.Th>
            <Table.Th>Bay</Table.Th>
            <Table.Th>Crew</Table.Th>
            <Table.Th>From</Table.Th>
            <Table.Th>To</Table.Th>
            <Table.Th>State</Table.Th>
            <Table.Th aria-label="What may be done" />
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {job.steps.map(step => {
            const key = { id: job.id, version: job.version, position: step.position }
            return (
              <Table.Tr key={step.position} data-hold={step.kind === 'hold'} className={styles.step}>
                <Table.Td>
                  {step.name}
                  {step.productName && step.kind === 'work' && <small> {step.productName}</small>}
                  {step.productId && step.kind === 'work' && <HazardMark productId={step.productId} />}
                  <small> {durationWords(step.minutes)}</small>
                </Table.Td>
                <Table.Td>
                  {step.bayName}
                  {step.moved && (
                    <small>
                      {' '}
                      to {step.moved.bayName} {nearWords(step.moved.at, job.zone, job.nowAt)}
                    </small>
                  )}
                </Table.Td>
                <Table.Td>{step.crew.map(person => person.name).join(', ')}</Table.Td>
                <Table.Td>
                  <Moment
                    actual={step.actualStartAt}
                    planned={step.startAt}
                    zone={job.zone}
                    nowAt={job.nowAt}
                  />
                </Table.Td>
                <Table.Td>
                  <Moment actual={step.actualEndAt} planned={step.endAt} zone={job.zone} nowAt={job.nowAt} />
                </Table.Td>
                <Table.Td>{stateOf(step)}</Table.Td>
                <Table.Td>
                  <Group gap={6} justify="flex-end" wrap="nowrap">
                    {step.can.start && (
                      <StartButton job={job} step={step} happened={happened} disabled={busy} />
                    )}
                    {step.can.finish && (
                      <Button
                        size="xs"
                        disabled={busy}
                        onClick={() => happened.take(time => finish.mutate({ ...key, ...time }))}
                        aria-label={`Finish ${step.name}`}
                      >
                        Finish
                      </Button>
                    )}
                    {step.can.reopen && (
                      <Button
                        size="xs"
                        variant="default"
                        disabled={busy}
                        onClick={() => reopen.mutate(key)}
                        aria-label={`Take back the last time of ${step.name}`}
                      >
                        Take back
                      </Button>
                    )}
                  </Group>
                </Table.Td>
              </Table.Tr>
            )
          })}
        </Table.Tbody>
      </Table>
    </section>
  )
}

/** The time as it was, or as it is planned, told apart by more than colour. */
function Moment({
  actual,
  planned,
  zone,
  nowAt,
}: {
  actual: number | null
  planned: number
  zone: string
  nowAt: number
}) {
  return actual === null ? (
    <span className={styles.soft}>≈ {nearWords(planned, zone, nowAt)}</span>
  ) : (
    <b>{nearWords(actual, zone, nowAt)}</b>
  )
}

function stateOf(step: JobStepView): string {
  if (step.state === 'done') return 'done ✓'
  if (step.state === 'running') return step.kind === 'hold' ? 'curing' : 'running'
  return 'planned'
}
