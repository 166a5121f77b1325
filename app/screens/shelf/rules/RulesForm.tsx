import { Select } from '@mantine/core'
import type { ShelfRulesView } from '../../../../main/api/views.ts'
import { useDraft } from '../../../data/draft.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import { DecimalInput, MoneyInput, OptionalDecimalInput } from '../../../parts/inputs.tsx'
import styles from '../Shelf.module.css'

const regimeWords = {
  'un-ghs': 'UN GHS as it stands',
  'eu-clp': 'EU, CLP',
  'us-osha': 'US, OSHA',
} as const

const percent = (share: number) => Math.round(share * 10_000) / 100

/** Service levels, what keeping goods costs, and the limit for flammable liquid. */
export function RulesForm({ rules }: { rules: ShelfRulesView }) {
  const { version, regimeUsed, ...fields } = rules
  const draft = useDraft(fields, version)
  const saving = useSaving(trpc.shelf.saveRules.mutationOptions())
  const faults = faultsOf(saving.error)
  const { value, change } = draft
  const level = (key: keyof ShelfRulesView['services'], label: string) => (
    <DecimalInput
      label={label}
      unit="%"
      value={percent(value.services[key])}
      onChange={share => change({ services: { ...value.services, [key]: share / 100 } })}
      error={faults.at(`services.${key}`)}
    />
  )
  return (
    <div className={styles.card}>
      <h2>Rules</h2>
      <Form
        error={saving.error}
        label="Rules of the shelf"
        onSave={() => saving.save({ ...value, version }, () => draft.settle())}
      >
        <p className={styles.soft}>
          Service level: of a hundred draws, how many should find their amount on the shelf.
        </p>
        <div className={styles.fields}>
          {level('vital', 'Vital products')}
          {level('usual', 'Usual products')}
          {level('handy', 'Handy products')}
          <DecimalInput
            label="Keeping goods costs a year"
            description="of their price: money tied up, room, ageing"
            inputWrapperOrder={['label', 'input', 'description', 'error']}
            unit="%"
            value={percent(value.holdRatePerYear)}
            onChange={share => change({ holdRatePerYear: share / 100 })}
            error={faults.at('holdRatePerYear')}
          />
          <MoneyInput
            label="Booking in one line costs"
            value={value.lineCostMinor}
            onChange={lineCostMinor => change({ lineCostMinor })}
            error={faults.at('lineCostMinor')}
          />
          <OptionalDecimalInput
            label="Flammable liquid, at most"
            description="from your local code; empty: not entered"
            inputWrapperOrder={['label', 'input', 'description', 'error']}
            unit="ml"
            value={value.flammableLimitMl}
            onChange={flammableLimitMl => change({ flammableLimitMl })}
            error={faults.at('flammableLimitMl')}
          />
          <Select
            label="Labels follow"
            data={[
              { value: 'usual', label: `The usual here: ${regimeWords[regimeUsed]}` },
              ...Object.entries(regimeWords).map(([code, label]) => ({ value: code, label })),
            ]}
            allowDeselect={false}
            value={value.regime ?? 'usual'}
            onChange={code =>
              change({ regime: code === 'usual' ? null : (code as ShelfRulesView['regime']) })
            }
            error={faults.at('regime')}
          />
        </div>
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
  )
}
