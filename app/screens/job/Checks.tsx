import { Checkbox, Select } from '@mantine/core'
import { useState } from 'react'
import type { JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { checkMomentChoices } from '../../parts/shopWords.ts'
import { nearWords } from '../../parts/time.ts'
import styles from './Job.module.css'
import { useJobAct } from './useJobAct.ts'

/** What is looked after around the work: each ticked off by whoever looked, with the time. */
export function Checks({ job }: { job: JobView }) {
  const [by, setBy] = useState<string | null>(null)
  const tick = useJobAct(trpc.jobs.tick.mutationOptions())
  if (job.checks.length === 0) return null
  const key = { id: job.id, version: job.version }
  const here = job.can.handOver
  return (
    <Card className={styles.card} title={say('Checks')}>
      {here && (
        <Select
          label={say('Who looks')}
          placeholder={say('Choose')}
          maw={260}
          data={job.crewNames}
          value={by}
          onChange={setBy}
        />
      )}
      {checkMomentChoices.map(({ value, label }) => {
        const due = job.checks.filter(check => check.moment === value)
        return due.length === 0 ? null : (
          <fieldset key={value} className={styles.checks}>
            <legend>{label}</legend>
            {due.map(({ id, words, doneBy, doneAt }) => (
              <Checkbox
                key={id}
                label={
                  <>
                    {words}
                    {doneBy !== null && doneAt !== null && (
                      <small className={pieces.soft}>
                        {' '}
                        {doneBy}, {nearWords(doneAt, job.zone, job.nowAt)}
                      </small>
                    )}
                  </>
                }
                checked={doneBy !== null}
                disabled={!here || tick.isPending || (doneBy === null && by === null)}
                onChange={() => tick.mutate({ ...key, checkId: id, by: doneBy === null ? by : null })}
              />
            ))}
          </fieldset>
        )
      })}
    </Card>
  )
}
