import { Alert, Button, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from '@tanstack/react-router'
import type { JobView } from '../../../main/api/views.ts'
import { isAmiss, standingWords } from '../../../main/domain/floor/index.ts'
import { decimalNow, say, withinSentence } from '../../../main/domain/language/index.ts'
import { scopeWords } from '../../../main/domain/shop/index.ts'
import { showPhone } from '../../../main/domain/vehicle/index.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Fact } from '../../parts/Facts.tsx'
import { Lookup } from '../../parts/Lookup.tsx'
import { money } from '../../parts/money.ts'
import pieces from '../../parts/pieces.module.css'
import { WasteNotes } from '../../parts/shelf/WasteNotes.tsx'
import { statusWords } from '../../parts/statusWords.ts'
import { nearWords } from '../../parts/time.ts'
import { Checks } from './Checks.tsx'
import { Cover } from './Cover.tsx'
import { CureClock } from './CureClock.tsx'
import styles from './Job.module.css'
import { JobActions } from './JobActions.tsx'
import { JobDraws } from './JobDraws.tsx'
import { JobLine } from './JobLine.tsx'
import { Layers } from './Layers.tsx'
import { Lent } from './Lent.tsx'
import { MissedWait } from './MissedWait.tsx'
import { NextBar } from './NextBar.tsx'
import { Notes } from './Notes.tsx'
import { OwnerWords } from './OwnerWords.tsx'
import { SlipOffer } from './SlipOffer.tsx'
import { StepTable } from './StepTable.tsx'
import { TestSpot } from './TestSpot.tsx'
import { Told } from './Told.tsx'
import { useHappened } from './useHappened.ts'

/** One car's visit: what is done, what cures, when it may honestly go home. */
export function Job() {
  const { id } = useParams({ from: '/jobs/$id' })
  const query = useQuery({ ...trpc.jobs.get.queryOptions({ id }), refetchInterval: 60_000 })
  const job = query.data
  if (!job) return <Lookup error={query.error} what={say('the job')} to="/" label={say('To the board')} />
  return <OneJob key={id} job={job} />
}

function OneJob({ job }: { job: JobView }) {
  const happened = useHappened(job)
  const { country } = useShop()
  const when = (at: number) => nearWords(at, job.zone, job.nowAt)
  return (
    <div className={pieces.column}>
      <header className={styles.heading}>
        <h1>
          {job.vehicle.plate} <span>{job.customer.name}</span>
        </h1>
        {job.leftAt === null && (
          <b className={isAmiss(job) ? pieces.late : pieces.kept}>{standingWords(job, when)}</b>
        )}
        <small>
          {say('job {number} · {statusWords} · {words} ·', {
            number: job.number,
            statusWords: statusWords[job.status],
            words: job.vehicle.words,
          })}{' '}
          <Link to="/customers/$id" params={{ id: job.customer.id }}>
            {say('customer')}
          </Link>{' '}
          ·{' '}
          <Link to="/cars/$id" params={{ id: job.vehicle.id }}>
            {say('upkeep')}
          </Link>{' '}
          ·{' '}
          <Link to="/jobs/$id/intake" params={{ id: job.id }}>
            {say('intake')}
          </Link>
          {job.customer.phone && ` · ${showPhone(job.customer.phone, country)}`}
        </small>
        <span className={styles.acts}>
          <JobActions job={job} happened={happened} />
        </span>
      </header>
      <SlipOffer job={job} />
      <MissedWait job={job} />
      {job.conflicts.map(words => (
        <Alert key={words} color="red" title={say('Conflict')}>
          {words}
        </Alert>
      ))}
      <section className={pieces.card} aria-label={say('From drop-off to handover')}>
        <JobLine job={job} />
        <NextBar job={job} happened={happened} />
      </section>
      <TestSpot job={job} />
      <JobDraws job={job} />
      <div className={styles.columns}>
        <div className={pieces.column}>
          <Promised job={job} when={when} />
          <Notes job={job} />
        </div>
        <div className={pieces.column}>
          <CureClock job={job} />
          <StepTable job={job} />
          <Checks job={job} />
        </div>
      </div>
      <WasteNotes productIds={job.steps.flatMap(step => (step.kind === 'work' && step.productId) || [])} />
      <Layers job={job} />
      <Told job={job} />
      {job.coated && <OwnerWords job={job} />}
      <section className={styles.cautions}>
        {[...job.cureWords, ...job.cautions].map(words => (
          <p key={words}>{words}</p>
        ))}
      </section>
      <Group>
        <Button component={Link} to="/" variant="default">
          {say('To the board')}
        </Button>
      </Group>
    </div>
  )
}

/** What was promised and sold. */
function Promised({ job, when }: { job: JobView; when(at: number): string }) {
  return (
    <Card className={styles.card} title={say('Promise')}>
      <dl>
        <Fact name={say('Drop-off')}>{when(job.arrivedAt ?? job.dropOffAt)}</Fact>
        <Fact name={say('Promised')}>{when(job.promisedAt)}</Fact>
        <Fact name={say('Now expected')}>
          <b className={isAmiss(job) ? pieces.late : pieces.kept}>{when(job.handoverAt)}</b>
        </Fact>
        {job.coated && (
          <>
            <Fact name={say('Recommended pick-up')}>{when(job.advisedAt)}</Fact>
            <Fact name={say('Keep dry')}>
              <Cover job={job} />
            </Fact>
          </>
        )}
        <Lent job={job} />
        {job.leftAt !== null && <Fact name={say('Left')}>{when(job.leftAt)}</Fact>}
        {job.treatments.map(treatment => (
          <Fact key={treatment.name} name={treatment.name}>
            {treatment.priceMinor > 0 ? (
              money(treatment.priceMinor, job.currency)
            ) : (
              <span className={pieces.late}>{say('⚑ no price yet')}</span>
            )}
            {treatment.scope !== 'whole' && ` · ${withinSentence(scopeWords[treatment.scope])}`}
            {treatment.leftOut && ` ${say('· without {leftOut}', { leftOut: treatment.leftOut })}`}
          </Fact>
        ))}
        {job.charges.map(({ kind, words, quantity, amountMinor }, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a charge has no other name than its place
          <Fact key={i} name={quantity === '1' ? words : `${decimalNow(quantity)} × ${words}`}>
            {money(kind === 'extra' ? amountMinor : -amountMinor, job.currency)}
          </Fact>
        ))}
        {job.depositMinor > 0 && (
          <Fact name={say('Deposit asked for')}>{money(job.depositMinor, job.currency)}</Fact>
        )}
        <Fact name={say('Together')}>
          <b>{money(job.priceMinor, job.currency)}</b> ·{' '}
          <Link to="/money/$section/$id" params={{ section: 'bill', id: job.id }}>
            {say('bill')}
          </Link>
        </Fact>
      </dl>
    </Card>
  )
}
