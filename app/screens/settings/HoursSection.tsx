import { useDraft } from '../../data/draft.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/Form.tsx'
import { FormFoot } from '../../parts/FormFoot.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { HoursEditor } from '../../parts/HoursEditor.tsx'
import { Exceptions } from './Exceptions.tsx'
import { Heading } from './Heading.tsx'
import styles from './Settings.module.css'

/** The week's opening hours, and the dates that differ. */
export function HoursSection() {
  const { demo: _, ...shop } = useShop()
  const draft = useDraft({ weekly: shop.weekly }, shop.version)
  const saving = useSaving(trpc.shop.update.mutationOptions())
  const faults = faultsOf(saving.error)
  return (
    <>
      <Heading title="Hours">
        Hands-on work, drop-off and handover happen while the shop is open; a coating cures through the night.
        A change that leaves a booked car outside is shown before it is made.
      </Heading>
      <div className={styles.card}>
        <Form
          error={saving.error}
          label="Opening hours"
          onSave={() => saving.save({ ...shop, ...draft.value, version: draft.version }, draft.settle)}
        >
          <HoursEditor
            label="Opening hours of the week"
            weekly={draft.value.weekly}
            onChange={weekly => draft.change({ weekly })}
            faults={faults}
          />
          <FormFoot
            faults={faults}
            busy={saving.busy}
            dirty={draft.dirty}
            outdated={draft.outdated}
            onReload={() => {
              saving.reset()
              draft.reload()
            }}
          />
        </Form>
      </div>
      <Exceptions />
    </>
  )
}
