import { Button, Group } from '@mantine/core'
import { useState } from 'react'
import type { VisitView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Refused } from '../../../parts/form/Refused.tsx'
import { approvedWords } from '../words.ts'

interface Props {
  visits: readonly VisitView[]
  /** The visits chosen, by key. */
  chosen: readonly string[]
  onDone(): void
}

/** Approves the reminders of the visits chosen in the list, together. */
export function ApproveChosen({ visits, chosen, onDone }: Props) {
  const [said, setSaid] = useState<string | null>(null)
  const saving = useSaving(trpc.reminders.approveAll.mutationOptions())
  const ids = visits.flatMap(visit =>
    chosen.includes(visit.key) && visit.reminder ? [visit.reminder.messageId] : [],
  )
  return (
    <Group
      gap="sm"
      role="status"
      aria-label={say('Chosen reminders')}
      hidden={ids.length === 0 && said === null}
    >
      {ids.length > 0 && (
        <Button
          size="compact-md"
          loading={saving.busy}
          onClick={() =>
            saving.save({ ids }, done => {
              setSaid(approvedWords(done))
              onDone()
            })
          }
        >
          {say('Approve {ids, plural, one {the chosen reminder} other {the {ids} chosen reminders}}', {
            ids: ids.length,
          })}
        </Button>
      )}
      {said}
      <Refused of={saving.error} />
    </Group>
  )
}
