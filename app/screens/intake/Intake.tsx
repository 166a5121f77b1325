import { Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from '@tanstack/react-router'
import { useState } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Lines } from '../../parts/Facts.tsx'
import { Lookup } from '../../parts/Lookup.tsx'
import pieces from '../../parts/pieces.module.css'
import { AfterWork } from './AfterWork.tsx'
import { CorrectionForm } from './CorrectionForm.tsx'
import { EntrySheet } from './EntrySheet.tsx'
import { Forbidden } from './Forbidden.tsx'
import styles from './Intake.module.css'
import { IntakeForm } from './IntakeForm.tsx'

/** One car as it came: marked, measured, photographed and signed; then what its paint forbids, and what the work changed. */
export function Intake() {
  const { id } = useParams({ from: '/jobs/$id/intake' })
  const query = useQuery(trpc.intake.get.queryOptions({ jobId: id }))
  const [correcting, setCorrecting] = useState(false)
  const record = query.data
  if (!record)
    return <Lookup error={query.error} what={say('the intake')} to="/" label={say('To the board')} />
  const last = record.entries.at(-1)
  const { facts } = record
  return (
    <div className={styles.screen}>
      <header className={`${pieces.heading} ${pieces.unprinted}`}>
        <h1>{say('Intake, {plate}', { plate: facts.plate })}</h1>
        <span className={pieces.soft}>
          {say('{customerName} · {vehicleWords} · job {number} ·', {
            customerName: facts.customerName,
            vehicleWords: facts.vehicleWords,
            number: record.number,
          })}{' '}
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
            <Button variant="default" onClick={() => window.print()}>
              {say('Print')}
            </Button>
          </div>
        )}
      </header>
      <div className={pieces.unprinted}>
        <Forbidden record={record} />
      </div>
      {record.cautions.length > 0 && (
        <Card title={say('With the tools in hand')} className={`${pieces.card} ${pieces.unprinted}`}>
          <details>
            <summary>{record.cautions[0]}</summary>
            <Lines of={record.cautions} />
          </details>
        </Card>
      )}
      {!last && <IntakeForm key={id} record={record} />}
      {last && correcting && (
        <CorrectionForm key={last.id} record={record} entry={last} onDone={() => setCorrecting(false)} />
      )}
      {last && !correcting && (
        <div className={pieces.unprinted}>
          <AfterWork record={record} />
        </div>
      )}
      {[...record.entries].reverse().map(entry => (
        <EntrySheet
          key={entry.id}
          record={record}
          entry={entry}
          correctedBy={record.entries.find(other => other.corrects === entry.number)?.number ?? null}
        />
      ))}
    </div>
  )
}
