import { Button, Group } from '@mantine/core'
import { useState } from 'react'
import type { VisitView } from '../../../../main/api/views.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { faultsOf } from '../../../parts/faults.ts'
import styles from '../Upkeep.module.css'

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
  const words = faultsOf(saving.error).rest()
  return (
    <Group gap="sm" role="status" aria-label="Chosen reminders" hidden={ids.length === 0 && said === null}>
      {ids.length > 0 && (
        <Button
          size="compact-md"
          loading={saving.busy}
          onClick={() =>
            saving.save({ ids }, ({ approved, words }) => {
              setSaid([`✓ ${approved} approved.`, ...words].join(' '))
              onDone()
            })
          }
        >
          Approve {ids.length === 1 ? 'the chosen reminder' : `the ${ids.length} chosen reminders`}
        </Button>
      )}
      {said}
      {words && <span className={styles.late}>{words}</span>}
    </Group>
  )
}
