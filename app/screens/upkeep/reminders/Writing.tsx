import { Button, Progress } from '@mantine/core'
import type { BatchView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useAct } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Refused } from '../../../parts/form/Refused.tsx'

/** How far the writing of the morning's reminders is, or what came of the last. */
export function Writing({ of: { working, result, failed } }: { of: BatchView['writing'] }) {
  const stopping = useAct(trpc.reminders.stopPreparing.mutationOptions())
  if (working) {
    const { done, total } = working
    return (
      <section aria-label={say('Writing reminders')}>
        <p role="status">
          {say('{total} The desk goes on meanwhile.', {
            total:
              total === 0
                ? say('Looking up who is due …')
                : say('Writing reminders: {done} of {total}.', { done, total }),
          })}
        </p>
        <Progress value={total === 0 ? 0 : (100 * done) / total} aria-label={say('Written so far')} my="sm" />
        <Button variant="default" loading={stopping.busy} onClick={() => stopping.run()}>
          {say('Stop')}
        </Button>
        <Refused of={stopping.error} />
      </section>
    )
  }
  if (!result) return <Refused words={failed} />
  const { written, stopped } = result
  return (
    <p role="status">
      {say('✓ {written} {written, plural, one {reminder} other {reminders}} written', { written })}
      {stopped && say(', then stopped')}.
    </p>
  )
}
