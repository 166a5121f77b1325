import type { ExposureFactor, ReminderSettingsView } from '../../../../main/api/views.ts'
import { useDraft } from '../../../data/draft.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import { DecimalInput } from '../../../parts/inputs.tsx'
import styles from '../Upkeep.module.css'
import { rulesToSave } from './rulesToSave.ts'

/** What the way a car lives does to an interval: rules of thumb until the shop sets its own. */
export function Factors({ rules }: { rules: ReminderSettingsView }) {
  const { version } = rules
  const draft = useDraft({ factors: rules.factors }, version)
  const saving = useSaving(trpc.reminders.saveSettings.mutationOptions())
  const faults = faultsOf(saving.error)
  const set = (factor: ExposureFactor, choiceId: string, multiplier: number) => {
    const choices = factor.choices.map(each => (each.id === choiceId ? { ...each, multiplier } : each))
    const changed: ExposureFactor = { ...factor, choices, mark: 'set by the shop' }
    draft.change({ factors: draft.value.factors.map(each => (each.id === factor.id ? changed : each)) })
  }
  return (
    <section className={styles.card} aria-labelledby="factors">
      <h2 id="factors">What exposure does</h2>
      <Form
        error={saving.error}
        label="What exposure does"
        onSave={() => saving.save(rulesToSave({ ...rules, factors: draft.value.factors }), draft.settle)}
      >
        <p className={styles.soft}>
          An interval is multiplied by these: under 1 the protection goes sooner. No table of them is
          published; they begin as rules of thumb.
        </p>
        {draft.value.factors.map((factor, i) => (
          <fieldset key={factor.id} style={{ border: 0, margin: 0, padding: 0 }}>
            <legend>
              {factor.label} <span className={styles.soft}>({factor.mark})</span>
            </legend>
            <div className={styles.fields}>
              {factor.choices.map((choice, k) => (
                <DecimalInput
                  key={choice.id}
                  label={choice.label}
                  unit="×"
                  value={choice.multiplier}
                  onChange={multiplier => set(factor, choice.id, multiplier)}
                  error={faults.at(`factors.${i}.choices.${k}.multiplier`)}
                />
              ))}
            </div>
          </fieldset>
        ))}
        <FormFoot
          faults={faults}
          busy={saving.busy}
          dirty={draft.dirty}
          outdated={draft.outdated}
          label="Save the factors"
          onReload={() => {
            saving.reset()
            draft.reload()
          }}
        />
      </Form>
    </section>
  )
}
