import type { BayConditionsView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { DegreesInput } from '../../parts/DegreesInput.tsx'
import { degrees } from '../../parts/degrees.ts'
import { Form } from '../../parts/form/Form.tsx'
import pieces from '../../parts/pieces.module.css'

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
      ? say('Now {usualC}, the middle of the last week’s readings.', { usualC: degrees(bay.usualC, units) })
      : bay.usualFrom === 'set'
        ? say('Set here; leave it empty to go by the last week’s readings.')
        : say('Nothing is known of this bay, so the profile’s own temperature is taken.')
  return (
    <Card title={say('Usual temperature')}>
      <Form form={form} label={say('Usual temperature of {bayName}', { bayName: bay.bayName })}>
        <p className={pieces.soft}>{say('Used for cures still to come. {found}', { found })}</p>
        <DegreesInput label={say('Usually')} {...form.field('celsius')} />
      </Form>
    </Card>
  )
}
