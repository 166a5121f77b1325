import { Alert, Button, CopyButton, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { mailHref } from '../../parts/mailHref.ts'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { longWords } from '../../parts/time.ts'
import { useJobAct } from './useJobAct.ts'

/**
 * A promise that slips, or that somebody is missing for: the next one that can be kept, another place where there is
 * one, and words for the owner.
 */
export function SlipOffer({ job }: { job: JobView }) {
  const { data } = useQuery(trpc.cure.job.queryOptions({ id: job.id }))
  const promise = useJobAct(trpc.jobs.promise.mutationOptions())
  const move = useJobAct(trpc.board.move.mutationOptions())
  if (!job.lateWords && !job.lack) return null
  const slip = data?.slip
  const place = slip?.place
  const when = (at: number) => longWords(at, job.zone, job.nowAt)
  return (
    <Alert color="red" title={job.lateWords ? say('Running late') : capital(job.lack ?? '')} role="alert">
      {job.lateWords && <p>{job.lateWords}</p>}
      {slip && (
        <>
          <Group gap="sm">
            {place && (
              <Button
                size="compact-sm"
                loading={move.isPending}
                onClick={() => {
                  const { position, bayId, startAt } = place
                  move.mutate({ jobId: job.id, version: job.version, position, bayId, startAt })
                }}
              >
                {say('Move the rest to {bayName}, {startAt}: home {handoverAt}', {
                  bayName: place.bayName,
                  startAt: when(place.startAt),
                  handoverAt: when(place.handoverAt),
                })}
              </Button>
            )}
            {job.can.promise && job.lateMin > 0 && (
              <Button
                size="compact-sm"
                variant={place ? 'default' : 'filled'}
                loading={promise.isPending}
                onClick={() => promise.mutate({ id: job.id, version: job.version, promisedAt: slip.nextAt })}
              >
                {say('Promise {nextAt} instead', { nextAt: when(slip.nextAt) })}
              </Button>
            )}
          </Group>
          {slip.message && (
            <details>
              <summary>{say('Words for {name}', { name: job.customer.name })}</summary>
              <pre className={pieces.quoted}>{slip.message.text}</pre>
              <Group gap="sm">
                <CopyButton value={slip.message.text}>
                  {({ copied, copy }) => (
                    <RowButton does={copied ? say('Copied ✓') : say('Copy the text')} onClick={copy} />
                  )}
                </CopyButton>
                {slip.message.to && (
                  <Button
                    size="compact-sm"
                    variant="default"
                    component="a"
                    href={mailHref({ ...slip.message, to: slip.message.to })}
                  >
                    {say('Open as e-mail')}
                  </Button>
                )}
              </Group>
            </details>
          )}
        </>
      )}
    </Alert>
  )
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
