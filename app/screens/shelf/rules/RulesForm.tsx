import { Select } from '@mantine/core'
import type { ShelfRulesView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { DecimalInput, MoneyInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'
import { OptionalAmountInput } from '../../../parts/shelf/AmountInput.tsx'
import { choicesFrom } from '../../../parts/shopWords.ts'

const regimeWords = {
  'un-ghs': say('UN GHS as it stands'),
  'eu-clp': say('EU, CLP'),
  'us-osha': say('US, OSHA'),
} as const

const percent = (share: number) => Math.round(share * 10_000) / 100

/** Service levels, what keeping goods costs, and the limit for flammable liquid. */
export function RulesForm({ rules }: { rules: ShelfRulesView }) {
  const { version, regimeUsed, ...fields } = rules
  const form = useForm({
    saved: fields,
    version,
    saving: trpc.shelf.saveRules.mutationOptions(),
    send: (value, version) => ({ ...value, version }),
  })
  const { value, change, faults } = form
  const level = (key: keyof ShelfRulesView['services'], label: string) => (
    <DecimalInput
      label={label}
      unit="%"
      most={100}
      value={percent(value.services[key])}
      onChange={share => change({ services: { ...value.services, [key]: share / 100 } })}
      error={faults.at(`services.${key}`)}
    />
  )
  return (
    <Card title={say('Rules')}>
      <Form form={form} label={say('Rules of the shelf')}>
        <p className={pieces.soft}>
          {say('Service level: of a hundred draws, how many should find their amount on the shelf.')}
        </p>
        <div className={pieces.fields}>
          {level('vital', say('Vital products'))}
          {level('usual', say('Usual products'))}
          {level('handy', say('Handy products'))}
          <DecimalInput
            label={say('Storage costs per year')}
            description={say('of their price: money tied up, room, ageing')}
            unit="%"
            value={percent(value.holdRatePerYear)}
            onChange={share => change({ holdRatePerYear: share / 100 })}
            error={faults.at('holdRatePerYear')}
          />
          <MoneyInput label={say('Cost of receiving one line')} {...form.field('lineCostMinor')} />
          <OptionalAmountInput
            of="ml"
            label={say('Flammable liquid, at most')}
            description={say('from your local code; empty: not entered')}
            {...form.field('flammableLimitMl')}
            // What a local code names is whole millilitres, typed in whatever unit.
            onChange={limit => change({ flammableLimitMl: limit === null ? null : Math.round(limit) })}
          />
          <Select
            label={say('Labels follow')}
            data={[
              {
                value: 'usual',
                label: say('Usual: {regimeWords}', { regimeWords: regimeWords[regimeUsed] }),
              },
              ...choicesFrom<string>(regimeWords),
            ]}
            allowDeselect={false}
            value={value.regime ?? 'usual'}
            onChange={code =>
              change({ regime: code === 'usual' ? null : (code as ShelfRulesView['regime']) })
            }
            error={faults.at('regime')}
          />
        </div>
      </Form>
    </Card>
  )
}
