import { Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from '@tanstack/react-router'
import { useState } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Lookup } from '../../parts/Lookup.tsx'
import pieces from '../../parts/pieces.module.css'
import styles from './Applied.module.css'
import { CorrectionForm } from './CorrectionForm.tsx'
import { EntrySheet } from './EntrySheet.tsx'
import { RecordForm } from './RecordForm.tsx'

/** What went on one car: written, signed once, then only corrected by further pages; printed for the owner and the file. */
export function Applied() {
  const { id } = useParams({ from: '/jobs/$id/applied' })
  const query = useQuery(trpc.applied.get.queryOptions({ jobId: id }))
  const [correcting, setCorrecting] = useState(false)
  const record = query.data
  if (!record)
    return <Lookup error={query.error} what={say('the record')} to="/" label={say('To the board')} />
  const last = record.entries.at(-1)
  return (
    <div className={styles.screen}>
      <header className={`${pieces.heading} ${pieces.unprinted}`}>
        <h1>{say('Applied record, {plate}', { plate: record.facts.plate })}</h1>
        <span className={pieces.soft}>
          {say('job {jobNumber} ·', { jobNumber: record.facts.jobNumber })}{' '}
          <Link to="/jobs/$id" params={{ id }} className={pieces.soft}>
            {say('back to the job')}
          </Link>
        </span>
        {last && (
          <div className={pieces.end}>
            <Button
              variant="default"
              mr={8}
              onClick={() => setCorrecting(now => !now)}
              aria-expanded={correcting}
            >
              {say('Correct it')}
            </Button>
            <Button onClick={() => window.print()}>{say('Print')}</Button>
          </div>
        )}
      </header>
      {record.facts.layers.length === 0 && (
        <p className={pieces.soft}>
          {say(
            'Nothing that cures is laid on this car yet. Once a coat is finished it stands here with its product, its times, the air it was laid in and who laid it; the panels and the lot are added by hand.',
          )}
        </p>
      )}
      {last && correcting && (
        <CorrectionForm key={last.id} record={record} entry={last} onDone={() => setCorrecting(false)} />
      )}
      {last
        ? [...record.entries]
            .reverse()
            .map(entry => (
              <EntrySheet
                key={entry.id}
                entry={entry}
                zone={record.zone}
                correctedBy={record.entries.find(other => other.corrects === entry.number)?.number ?? null}
              />
            ))
        : record.facts.layers.length > 0 && <RecordForm record={record} />}
    </div>
  )
}
