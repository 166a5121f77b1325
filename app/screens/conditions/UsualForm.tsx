import { Stack } from '@mantine/core'
import type { BayConditionsView } from '../../../main/api/views.ts'
import { useDraft } from '../../data/draft.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { CardFoot } from '../../parts/CardFoot.tsx'
import { DegreesInput } from '../../parts/DegreesInput.tsx'
import { degrees } from '../../parts/degrees.ts'
import { Form } from '../../parts/Form.tsx'
import { faultsOf } from '../../parts/faults.ts'
import styles from './Conditions.module.css'

/** What the bay is taken to have from now on: the owner's word, else the middle of the last week. */
export function UsualForm({ bay }: { bay: BayConditionsView }) {
  const { units } = useShop()
  const draft = useDraft({ celsius: bay.usualFrom === 'set' ? bay.usualC : null }, bay.version)
  const { save, busy, error } = useSaving(trpc.readings.bayUsual.mutationOptions())
  const faults = faultsOf(error)
  const found =
    bay.usualFrom === 'last week'
      ? `Now ${degrees(bay.usualC, units)}, the middle of the last week’s readings.`
      : bay.usualFrom === 'set'
        ? 'Set here; leave it empty to go by the last week’s readings.'
        : 'Nothing is known of this bay, so the profile’s own temperature is taken.'
  return (
    <section className={styles.card}>
      <h2>Usual temperature</h2>
      <Form
        onSave={() =>
          save({ bayId: bay.bayId, version: bay.version, celsius: draft.value.celsius }, draft.settle)
        }
        label={`Usual temperature of ${bay.bayName}`}
        error={error}
      >
        <Stack gap="sm">
          <p className={styles.soft}>A cure still to come is reckoned with this. {found}</p>
          <DegreesInput
            label="Usually"
            valueC={draft.value.celsius}
            onChange={celsius => draft.change({ celsius })}
            error={faults.at('celsius')}
          />
          <CardFoot
            faults={faults}
            busy={busy}
            label="Save"
            dirty={draft.dirty}
            onReload={draft.outdated || faults.stale ? draft.reload : undefined}
          />
        </Stack>
      </Form>
    </section>
  )
}
