import { Checkbox, Select, Textarea, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { MoneyRules } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/form/Form.tsx'
import { DecimalInput, MoneyInput } from '../../parts/inputs.tsx'
import pieces from '../../parts/pieces.module.css'
import { Waiting } from '../../parts/Waiting.tsx'
import { Heading } from './Heading.tsx'
import { ExtraRows, PackageRows, TaxRows } from './MoneyRows.tsx'

/** How the shop prices, taxes and bills. */
export function MoneySection() {
  const { data, error } = useQuery(trpc.money.rules.queryOptions())
  if (!data) return <Waiting error={error} words={say('Looking it up')} />
  return <Rules rules={data} />
}

function Rules({ rules }: { rules: MoneyRules }) {
  const form = useForm({
    saved: rules,
    version: rules.version,
    saving: trpc.money.saveRules.mutationOptions(),
    send: (value, version) => ({ ...value, version }),
  })
  const { value, change } = form
  return (
    <>
      <Heading title={say('Prices and tax')}>
        {say(
          'What is sold beside the treatments, what is taken off, and the tax on all of it. Which rates apply where is for your local rules and your bookkeeper to say; what was issued before stays as it was.',
        )}
      </Heading>
      <div className={pieces.card}>
        <Form form={form} label={say('Prices and tax')}>
          <h3>{say('Tax rates, the usual one first')}</h3>
          <TaxRows form={form} />
          <Checkbox label={say('Prices include tax')} {...form.tick('taxInPrices')} />
          <h3>{say('Extras')}</h3>
          <ExtraRows form={form} />
          <h3>{say('Packages: treatments that cost less together')}</h3>
          <PackageRows form={form} />
          <Checkbox
            label={say('Work that two treatments share, such as one wash, is charged once')}
            {...form.tick('sharedOnce')}
          />
          <h3>{say('Condition of the paint')}</h3>
          <div className={pieces.fields}>
            <DecimalInput
              label={say('More for worn paint')}
              description={say('On treatments that take longer by condition')}
              unit="%"
              least={0}
              most={100}
              value={Number(value.wornPercent)}
              onChange={percent => change({ wornPercent: String(percent) })}
              error={form.faults.at('wornPercent')}
            />
            <DecimalInput
              label={say('More for heavily worn paint')}
              unit="%"
              least={0}
              most={100}
              value={Number(value.heavyPercent)}
              onChange={percent => change({ heavyPercent: String(percent) })}
              error={form.faults.at('heavyPercent')}
            />
          </div>
          <h3>{say('Paying')}</h3>
          <div className={pieces.fields}>
            <DecimalInput
              label={say('Deposit at the hold')}
              description={say('0: none is asked for')}
              unit="%"
              least={0}
              most={100}
              value={Number(value.depositPercent)}
              onChange={percent => change({ depositPercent: String(percent) })}
              error={form.faults.at('depositPercent')}
            />
            <DecimalInput
              label={say('Invoices are paid within')}
              unit={say('days')}
              least={0}
              most={365}
              whole
              {...form.field('payWithinDays')}
            />
            <DecimalInput
              label={say('Quotes are good for')}
              unit={say('days')}
              least={0}
              most={365}
              whole
              {...form.field('quoteDays')}
            />
            <MoneyInput
              label={say('Smallest coin')}
              description={say('Cash is rounded to it')}
              {...form.field('cashStepMinor')}
            />
            <MoneyInput
              label={say('An hour of work costs the shop')}
              description={say('For what each treatment earns')}
              {...form.field('labourMinor')}
            />
            <MoneyInput
              label={say('Fee where nobody comes')}
              description={say('0: none is asked')}
              {...form.field('noShowMinor')}
            />
            <MoneyInput
              label={say('Fee for each day a car is not fetched')}
              description={say('0: none is asked')}
              {...form.field('keptDayMinor')}
            />
          </div>
          <h3>{say('On invoices')}</h3>
          <div className={pieces.fields}>
            <TextInput label={say('Letters of invoices')} {...form.field('invoiceSeries')} />
            <TextInput label={say('Letters of credit notes')} {...form.field('creditSeries')} />
            <TextInput label={say('The shop’s tax number')} {...form.field('taxNumber')} />
            <Textarea
              label={say('How to pay')}
              description={say('Bank and account')}
              autosize
              minRows={2}
              className={pieces.whole}
              maw={480}
              {...form.field('payTo')}
            />
          </div>
        </Form>
      </div>
    </>
  )
}

/** The shop's rates to choose from, for what is taxed otherwise than usual. */
export function TaxSelect(props: {
  label: string
  value: string
  onChange(key: string): void
  error?: string | undefined
}) {
  const taxes = useQuery(trpc.money.rules.queryOptions()).data?.taxes ?? []
  const { value, onChange, ...rest } = props
  return (
    <Select
      {...rest}
      allowDeselect={false}
      data={[
        { value: '', label: say('the usual one') },
        ...taxes.slice(1).map(({ key, name, percent }) => ({ value: key, label: `${name} ${percent} %` })),
      ]}
      value={taxes.some(tax => tax.key === value) ? value : ''}
      onChange={key => onChange(key ?? '')}
    />
  )
}
