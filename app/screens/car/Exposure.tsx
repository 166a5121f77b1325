import { Select } from '@mantine/core'
import type { CarView } from '../../../main/api/views.ts'
import { useDraft } from '../../data/draft.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/Form.tsx'
import { FormFoot } from '../../parts/FormFoot.tsx'
import { faultsOf } from '../../parts/faults.ts'
import styles from '../upkeep/Upkeep.module.css'

/** How the car lives, and what that makes of the product's interval: every figure marked for what it rests on. */
export function Exposure({ car }: { car: CarView }) {
  const { factors, version } = car.exposure
  const saved: Record<string, string> = Object.fromEntries(
    factors.flatMap(factor => (factor.chosen === null ? [] : [[factor.id, factor.chosen]])),
  )
  const draft = useDraft(saved, version)
  const saving = useSaving(trpc.upkeep.exposure.save.mutationOptions())
  const faults = faultsOf(saving.error)
  const { interval } = car
  return (
    <section className={styles.card} aria-labelledby="exposure">
      <h2 id="exposure">
        How it lives <small>rules of thumb, for the shop to change; inspections correct them</small>
      </h2>
      <Form
        error={saving.error}
        label="How it lives"
        onSave={() => {
          const choices = Object.fromEntries(
            Object.entries(draft.value).filter(([, choice]) => choice !== ''),
          )
          saving.save({ vehicleId: car.vehicleId, choices, version }, draft.settle)
        }}
      >
        <div className={styles.fields}>
          {factors.map(factor => (
            <Select
              key={factor.id}
              label={factor.label}
              description={factor.mark}
              placeholder="not known"
              clearable
              clearButtonProps={{ 'aria-label': `Clear ${factor.label}` }}
              data={factor.choices.map(choice => ({
                value: choice.id,
                label: `${choice.label} (× ${choice.multiplier})`,
              }))}
              value={draft.value[factor.id] || null}
              onChange={choice => draft.change({ [factor.id]: choice ?? '' })}
              error={faults.at(`exposure.${factor.id}`) ?? faults.at(`choices.${factor.id}`)}
            />
          ))}
        </div>
        {interval && (
          <p>
            {interval.sentence}{' '}
            <span className={styles.soft}>
              The product’s {interval.productDays} days: {interval.productMark}.
            </span>
          </p>
        )}
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
    </section>
  )
}
