import { Button, Checkbox, Group, Select, TextInput } from '@mantine/core'
import { useEffect } from 'react'
import type { BillView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { DecimalTextInput, MoneyInput } from '../../../parts/inputs.tsx'
import styles from '../Money.module.css'

type Charge = BillView['charges'][number]

const kindWords: Record<Charge['kind'], string> = {
  extra: say('Extra'),
  shared: say('Charged once'),
  package: say('Package'),
  discount: say('Discount'),
}

/** The bill as it is written before it is invoiced: prices, extras, what is taken off and why. */
export function BillForm({ bill, onDirty }: { bill: BillView; onDirty(dirty: boolean): void }) {
  const { id, version, prices, charges, depositMinor, taxExempt, taxReversed } = bill
  const form = useForm({
    saved: {
      prices: prices.map(({ id, priceMinor }) => ({ id, priceMinor })),
      charges: charges.map(each => ({ ...each })),
      depositMinor,
      taxExempt,
      taxReversed,
    },
    version,
    saving: trpc.money.saveBill.mutationOptions(),
    send: (value, version) => ({ ...value, id, version }),
  })
  const { value, change, dirty } = form
  useEffect(() => onDirty(dirty), [dirty, onDirty])
  const add = (charge: Partial<Charge>) =>
    change({
      charges: [
        ...value.charges,
        { kind: 'extra', treatmentId: null, words: '', quantity: '1', amountMinor: 0, taxKey: '', ...charge },
      ],
    })
  return (
    <Card title={say('Change it')} about={say('until it is invoiced')}>
      <Form form={form} label={say('Bill')}>
        {form.each<{ id: string; priceMinor: number }>('prices').map((row, i) => (
          <MoneyInput key={row.value.id} label={prices[i]?.name} maw={220} {...row.field('priceMinor')} />
        ))}
        {form.each<Charge>('charges').map((row, i) => {
          const charge = row.value
          const whose = prices.find(price => price.treatmentId === charge.treatmentId)
          const what = kindWords[charge.kind]
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a charge has no other name than its place
            <div key={i} className={styles.typed}>
              <TextInput label={whose ? `${what}, ${whose.name}` : what} {...row.field('words')} />
              <DecimalTextInput
                label={say('How many')}
                least={0}
                most={9999}
                disabled={charge.kind !== 'extra'}
                {...row.field('quantity')}
              />
              <MoneyInput
                label={charge.kind === 'extra' ? say('Each') : say('Off')}
                {...row.field('amountMinor')}
              />
              <Button
                variant="default"
                mt={26}
                aria-label={say('Take out {what} {words}', { what, words: charge.words })}
                onClick={() => change({ charges: value.charges.toSpliced(i, 1) })}
              >
                ✕
              </Button>
            </div>
          )
        })}
        <Group align="end">
          <Select
            aria-label={say('Add an extra')}
            placeholder={say('Add an extra')}
            value={null}
            data={[
              ...bill.extras.map(extra => ({ value: extra.key, label: extra.name })),
              { value: '', label: say('Something else') },
            ]}
            onChange={key => {
              const extra = bill.extras.find(each => each.key === key)
              add(extra ? { words: extra.name, amountMinor: extra.priceMinor, taxKey: extra.taxKey } : {})
            }}
          />
          <Select
            aria-label={say('Give a discount')}
            placeholder={say('Give a discount')}
            value={null}
            data={[
              { value: 'whole', label: say('The whole') },
              ...prices.map(price => ({ value: price.treatmentId, label: price.name })),
            ]}
            onChange={of => of && add({ kind: 'discount', treatmentId: of === 'whole' ? null : of })}
          />
        </Group>
        <Group align="start">
          <MoneyInput label={say('Deposit asked for')} {...form.field('depositMinor')} />
          <TextInput
            label={say('No tax because')}
            description={say('Empty: tax is charged')}
            {...form.field('taxExempt')}
          />
        </Group>
        <Checkbox label={say('Reverse charge: the customer owes the tax')} {...form.tick('taxReversed')} />
      </Form>
    </Card>
  )
}
