import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/form/Form.tsx'
import { HoursEditor } from '../../parts/HoursEditor.tsx'
import pieces from '../../parts/pieces.module.css'
import { Exceptions } from './Exceptions.tsx'
import { Heading } from './Heading.tsx'

/** The week's opening hours, and the dates that differ. */
export function HoursSection() {
  const { demo: _, ...shop } = useShop()
  const form = useForm({
    saved: { weekly: shop.weekly },
    version: shop.version,
    saving: trpc.shop.update.mutationOptions(),
    send: (value, version) => ({ ...shop, ...value, version }),
  })
  return (
    <>
      <Heading title={say('Hours')}>
        {say(
          'Hands-on work, drop-off and handover happen while the shop is open; a coating cures through the night. A change that leaves a booked car outside is shown before it is made.',
        )}
      </Heading>
      <div className={pieces.card}>
        <Form form={form} label={say('Opening hours')}>
          <HoursEditor
            label={say('Opening hours of the week')}
            weekly={form.value.weekly}
            onChange={weekly => form.change({ weekly })}
            faults={form.faults}
          />
        </Form>
      </div>
      <Exceptions />
    </>
  )
}
