import { Button, MultiSelect, Select, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { MoneyRules } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { taxCategories } from '../../../main/domain/money/index.ts'
import type { FormOf } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { DecimalTextInput, MoneyInput } from '../../parts/inputs.tsx'
import { choicesOf } from '../../parts/shopWords.ts'
import styles from './MoneyRows.module.css'

interface Props {
  form: FormOf<MoneyRules>
}

const categoryWords: Record<(typeof taxCategories)[number], string> = {
  S: say('taxed'),
  Z: say('zero rate'),
  E: say('exempt'),
  O: say('no tax'),
}

const newKey = () => crypto.randomUUID()

/** The shop's tax rates. */
export function TaxRows({ form }: Props) {
  const { taxes } = form.value
  return (
    <>
      {form.each<MoneyRules['taxes'][number]>('taxes').map((row, i) => (
        <div key={row.value.key} className={styles.row}>
          <TextInput label={say('Name on papers')} {...row.field('name')} />
          <DecimalTextInput label={say('Percent')} least={0} most={100} {...row.field('percent')} />
          <Select
            label={say('Which is')}
            data={taxCategories.map(value => ({ value, label: categoryWords[value] }))}
            {...row.choice('category')}
          />
          <Remove
            what={say('the rate {name}', { name: row.value.name })}
            disabled={taxes.length === 1}
            onClick={() => form.change({ taxes: taxes.toSpliced(i, 1) })}
          />
        </div>
      ))}
      <Add
        what={say('a rate')}
        onClick={() =>
          form.change({ taxes: [...taxes, { key: newKey(), name: '', percent: '', category: 'S' }] })
        }
      />
    </>
  )
}

/** What is sold beside the treatments. */
export function ExtraRows({ form }: Props) {
  const { extras, taxes } = form.value
  return (
    <>
      {form.each<MoneyRules['extras'][number]>('extras').map((row, i) => (
        <div key={row.value.key} className={styles.row}>
          <TextInput label={say('What it is')} {...row.field('name')} />
          <MoneyInput label={say('Price')} {...row.field('priceMinor')} />
          <Select
            label={say('Tax')}
            data={[
              { value: '', label: say('the usual one') },
              ...taxes.slice(1).map(({ key, name }) => ({ value: key, label: name })),
            ]}
            {...row.choice('taxKey')}
          />
          <Remove
            what={say('the extra {name}', { name: row.value.name })}
            onClick={() => form.change({ extras: extras.toSpliced(i, 1) })}
          />
        </div>
      ))}
      <Add
        what={say('an extra')}
        onClick={() =>
          form.change({ extras: [...extras, { key: newKey(), name: '', priceMinor: 0, taxKey: '' }] })
        }
      />
    </>
  )
}

/** Treatments that cost less together. */
export function PackageRows({ form }: Props) {
  const { packages } = form.value
  const treatments = useQuery(trpc.treatments.list.queryOptions()).data
  // Before they are read a package could only show their ids.
  if (!treatments) return null
  return (
    <>
      {form.each<MoneyRules['packages'][number]>('packages').map((row, i) => (
        <div key={row.value.key} className={styles.row}>
          <TextInput label={say('Name')} {...row.field('name')} />
          <DecimalTextInput label={say('Percent less')} least={0} most={100} {...row.field('percent')} />
          <MultiSelect
            label={say('Treatments')}
            data={choicesOf(treatments)}
            {...row.field('treatmentIds')}
          />
          <Remove
            what={say('the package {name}', { name: row.value.name })}
            onClick={() => form.change({ packages: packages.toSpliced(i, 1) })}
          />
        </div>
      ))}
      <Add
        what={say('a package')}
        onClick={() =>
          form.change({
            packages: [...packages, { key: newKey(), name: '', treatmentIds: [], percent: '10' }],
          })
        }
      />
    </>
  )
}

function Remove({ what, ...rest }: { what: string; disabled?: boolean; onClick(): void }) {
  return (
    <Button variant="default" aria-label={say('Take out {what}', { what })} {...rest}>
      ✕
    </Button>
  )
}

function Add({ what, onClick }: { what: string; onClick(): void }) {
  return (
    <div>
      <Button variant="default" size="compact-md" onClick={onClick}>
        {say('Add {what}', { what })}
      </Button>
    </div>
  )
}
