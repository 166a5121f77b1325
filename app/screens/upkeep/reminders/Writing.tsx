import { Button, Progress } from '@mantine/core'
import type { BatchView } from '../../../../main/api/views.ts'
import { useAct } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Refused } from '../../../parts/form/Refused.tsx'

/** How far the writing of the morning's reminders is, or what came of the last. */
export function Writing({ of: { working, result, failed } }: { of: BatchView['writing'] }) {
  const stopping = useAct(trpc.reminders.stopPreparing.mutationOptions())
  if (working) {
    const { done, total } = working
    return (
      <section aria-label="Writing reminders">
        <p role="status">
          {total === 0 ? 'Looking up who is due …' : `Writing reminders: ${done} of ${total}.`} The desk goes
          on meanwhile.
        </p>
        <Progress value={total === 0 ? 0 : (100 * done) / total} aria-label="Written so far" my="sm" />
        <Button variant="default" loading={stopping.busy} onClick={() => stopping.run()}>
          Stop
        </Button>
        <Refused of={stopping.error} />
      </section>
    )
  }
  if (!result) return <Refused words={failed} />
  const { written, stopped } = result
  return (
    <p role="status">
      ✓ {written} {written === 1 ? 'reminder' : 'reminders'} written{stopped && ', then stopped'}.
    </p>
  )
}
