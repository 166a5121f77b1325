import { Alert, Button, Group } from '@mantine/core'
import { useState } from 'react'
import type { JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { AskDialog } from '../../parts/AskDialog.tsx'
import { useJobAct } from './useJobAct.ts'

/** A step that came too late for the one before it: its work is added by one key, or somebody says why it is not. */
export function MissedWait({ job }: { job: JobView }) {
  const [asking, setAsking] = useState(false)
  const settle = useJobAct(trpc.jobs.missed.mutationOptions(), () => setAsking(false))
  if (!job.missed) return null
  const { position, words, adds } = job.missed
  const key = { id: job.id, version: job.version, position }
  return (
    <Alert color="orange" title={words} role="alert">
      {adds === null ? null : (
        <Group gap="sm">
          <Button size="compact-sm" loading={settle.isPending} onClick={() => settle.mutate(key)}>
            {say('Add {adds}', { adds })}
          </Button>
          <Button size="compact-sm" variant="default" onClick={() => setAsking(true)}>
            {say('Go on without')}
          </Button>
        </Group>
      )}
      {asking && (
        <AskDialog
          title={say('Go on without the added work?')}
          words={say("{words} The product's data sheet decides whether that holds.", { words })}
          label={say('Why nothing is added')}
          action={say('Go on without')}
          busy={settle.isPending}
          onClose={() => setAsking(false)}
          onSay={reason => settle.mutate({ ...key, reason })}
        />
      )}
    </Alert>
  )
}
