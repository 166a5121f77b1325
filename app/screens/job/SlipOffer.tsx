import { Alert, Button, CopyButton, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { JobView } from '../../../main/api/views.ts'
import { trpc } from '../../data/trpc.ts'
import { longWords } from '../../parts/time.ts'
import styles from './Cure.module.css'
import { useJobAct } from './useJobAct.ts'

/** A promise that slips: the next one that can be kept, a sooner place where there is one, and words for the owner. */
export function SlipOffer({ job }: { job: JobView }) {
  const { data } = useQuery(trpc.cure.job.queryOptions({ id: job.id }))
  const promise = useJobAct(trpc.jobs.promise.mutationOptions())
  const move = useJobAct(trpc.board.move.mutationOptions())
  if (!job.lateWords) return null
  const slip = data?.slip
  const when = (at: number) => longWords(at, job.zone)
  return (
    <Alert color="red" title="The promise slips" role="alert">
      <p>{job.lateWords}</p>
      {slip && (
        <>
          <Group gap="sm">
            {slip.sooner && (
              <Button
                size="compact-sm"
                loading={move.isPending}
                onClick={() => {
                  const { position, bayId, startAt } = slip.sooner!
                  move.mutate({ jobId: job.id, version: job.version, position, bayId, startAt })
                }}
              >
                Move the rest to {slip.sooner.bayName}, {when(slip.sooner.startAt)}: home{' '}
                {when(slip.sooner.handoverAt)}
              </Button>
            )}
            {job.can.promise && (
              <Button
                size="compact-sm"
                variant={slip.sooner ? 'default' : 'filled'}
                loading={promise.isPending}
                onClick={() => promise.mutate({ id: job.id, version: job.version, promisedAt: slip.nextAt })}
              >
                Promise {when(slip.nextAt)} instead
              </Button>
            )}
          </Group>
          <details>
            <summary>Words for {job.customer.name}</summary>
            <pre className={styles.message}>{slip.message.text}</pre>
            <Group gap="sm">
              <CopyButton value={slip.message.text}>
                {({ copied, copy }) => (
                  <Button size="compact-sm" variant="default" onClick={copy}>
                    {copied ? 'Copied ✓' : 'Copy the text'}
                  </Button>
                )}
              </CopyButton>
              {slip.message.to && (
                <Button
                  size="compact-sm"
                  variant="default"
                  component="a"
                  href={`mailto:${slip.message.to}?subject=${encodeURIComponent(slip.message.subject)}&body=${encodeURIComponent(slip.message.text)}`}
                >
                  Open as e-mail
                </Button>
              )}
            </Group>
          </details>
        </>
      )}
    </Alert>
  )
}
