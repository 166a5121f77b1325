import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { HistoryLines } from '../../parts/HistoryLines.tsx'
import styles from './Job.module.css'
import { useJobAct } from './useJobAct.ts'

/** Who said and did what when, and a line for the next thing somebody says. */
export function Notes({ job }: { job: JobView }) {
  const [words, setWords] = useState('')
  const note = useJobAct(trpc.jobs.note.mutationOptions(), () => setWords(''))
  return (
    <Card title={say('Notes and history')}>
      {job.note && <p>{job.note}</p>}
      <form
        aria-label={say('Note')}
        onSubmit={event => {
          event.preventDefault()
          if (words.trim()) note.mutate({ id: job.id, words })
        }}
      >
        <div className={styles.note}>
          <TextInput
            aria-label={say('Note on this job')}
            placeholder={say('What the owner or the crew said')}
            maxLength={400}
            value={words}
            onChange={event => setWords(event.currentTarget.value)}
          />
          <Button type="submit" variant="default" disabled={!words.trim()} loading={note.isPending}>
            {say('Keep it')}
          </Button>
        </div>
      </form>
      <HistoryLines filter={{ entities: ['job'], entityId: job.id }} />
    </Card>
  )
}
