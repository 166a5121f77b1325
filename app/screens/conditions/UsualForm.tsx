import { Stack } from '@mantine/core'
import type { BayConditionsView } from '../../../main/api/views.ts'
import { useForm } from '../../data/form.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { DegreesInput } from '../../parts/DegreesInput.tsx'
import { degrees } from '../../parts/degrees.ts'
import { Form } from '../../parts/form/Form.tsx'
import styles from './Conditions.module.css'

/** What the bay is taken to have from now on: the owner's word, else the middle of the last week. */
export function UsualForm({ bay }: { bay: BayConditionsView }) {
  const { units } = useShop()
  const form = useForm({
    saved: { celsius: bay.usualFrom === 'set' ? bay.usualC : null },
    version: bay.version,
    saving: trpc.readings.bayUsual.mutationOptions(),
    send: (value, version) => ({ ...value, bayId: bay.bayId, version }),
  })
  const found =
    bay.usualFrom === 'last week'
      ? `Now ${degrees(bay.usualC, units)}, the middle of the last week’s readings.`
      : bay.usualFrom === 'set'
        ? 'Set here; leave it empty to go by the last week’s readings.'
        : 'Nothing is known of this bay, so the profile’s own temperature is taken.'
  return (
    <section className={styles.card}>
      <h2>Usual temperature</h2>
      <Form form={form} label={`Usual temperature of ${bay.bayName}`} save="Save">
        <Stack gap="sm">
          <p className={styles.soft}>A cure still to come is reckoned with this. {found}</p>
          <DegreesInput label="Usually" {...form.field('celsius')} />
        </Stack>
      </Form>
    </section>
  )
}
