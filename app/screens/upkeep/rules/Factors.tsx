import type { ReminderSettingsView } from '../../../../main/api/views.ts'
import { say, sayKept } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { DecimalInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'

type Factor = ReminderSettingsView['factors'][number]

/** What the way a car lives does to an interval: rules of thumb until the shop sets its own. */
export function Factors({ rules }: { rules: ReminderSettingsView }) {
  const form = useForm({
    saved: { factors: rules.factors },
    version: rules.version,
    saving: trpc.reminders.saveSettings.mutationOptions(),
    send: (value, version) => ({ ...rules, ...value, version }),
  })
  const { value, change, faults } = form
  const set = (factor: Factor, choiceId: string, multiplier: number) => {
    const choices = factor.choices.map(each => (each.id === choiceId ? { ...each, multiplier } : each))
    const changed: Factor = { ...factor, choices, mark: 'set by the shop' }
    change({ factors: value.factors.map(each => (each.id === factor.id ? changed : each)) })
  }
  return (
    <Card title={say('What exposure does')}>
      <Form form={form} label={say('What exposure does')} save={say('Save the factors')}>
        <p className={pieces.soft}>
          {say(
            'An interval is multiplied by these: under 1 the protection goes sooner. No table of them is published; they begin as rules of thumb.',
          )}
        </p>
        {value.factors.map((factor, i) => (
          <fieldset key={factor.id} style={{ border: 0, margin: 0, padding: 0 }}>
            <legend>
              {sayKept(factor.label)} <span className={pieces.soft}>({sayKept(factor.mark)})</span>
            </legend>
            <div className={pieces.fields}>
              {factor.choices.map((choice, k) => (
                <DecimalInput
                  key={choice.id}
                  label={sayKept(choice.label)}
                  unit="×"
                  most={20}
                  value={choice.multiplier}
                  onChange={multiplier => set(factor, choice.id, multiplier)}
                  error={faults.at(`factors.${i}.choices.${k}.multiplier`)}
                />
              ))}
            </div>
          </fieldset>
        ))}
      </Form>
    </Card>
  )
}
