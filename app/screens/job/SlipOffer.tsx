import { Button, CopyButton, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { mailHref } from '../../parts/mailHref.ts'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { longWords, nearWords } from '../../parts/time.ts'
import styles from './Job.module.css'
import { useJobAct } from './useJobAct.ts'

/**
 * A promise that slips, or that somebody is missing for: one line with its ways out, the next
 * promise that can be kept, another place where there is one, and words for the owner.
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
    <div className={styles.slip} role="alert">
      <p>
        {job.lateWords && (
          <b>
            ⚑{' '}
            {say('Promised {promisedAt}, now expected {handoverAt}.', {
              promisedAt: nearWords(job.promisedAt, job.zone, job.nowAt),
              handoverAt: nearWords(job.handoverAt, job.zone, job.nowAt),
            })}
          </b>
        )}{' '}
        {job.lack && <b>⚑ {capital(job.lack)}.</b>}{' '}
        <Link to="/plan/$section" params={{ section: 'mend' }}>
          {say('All options')}
        </Link>
      </p>
      {place && (
        <Button
          size="compact-sm"
          variant="default"
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
      {slip && job.can.promise && job.lateMin > 0 && (
        <Button
          size="compact-sm"
          variant="default"
          loading={promise.isPending}
          onClick={() => promise.mutate({ id: job.id, version: job.version, promisedAt: slip.nextAt })}
        >
          {say('Promise {nextAt} instead', { nextAt: when(slip.nextAt) })}
        </Button>
      )}
      {slip?.message && (
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
    </div>
  )
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
