import { Checkbox, Textarea, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { ProductView, TreatmentView } from '../../../../main/api/views.ts'
import { say, withinSentence } from '../../../../main/domain/language/index.ts'
import type { TreatmentStep } from '../../../../main/domain/shop/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { MoneyInput } from '../../../parts/inputs.tsx'
import { sizeChoices } from '../../../parts/shopWords.ts'
import { TaxSelect } from '../MoneySection.tsx'
import { RowEditor, useRowForm } from '../RowEditor.tsx'
import { ChainEditor } from './ChainEditor.tsx'
import { CheckFields } from './CheckFields.tsx'
import styles from './Treatments.module.css'

type Fields = Pick<
  TreatmentView,
  'name' | 'summary' | 'prices' | 'taxKey' | 'needsTwoPeople' | 'checks' | 'steps'
>

const freshStep: TreatmentStep = {
  name: '',
  stage: 'prepare',
  needs: 'wet',
  skill: 'wash',
  crew: 1,
  splittable: false,
  sameBay: false,
  waitMin: null,
  waitMax: null,
  minutes: { small: 60, medium: 60, large: 60, xl: 60 },
  byCondition: false,
  productId: null,
}

const fresh: Fields = {
  name: '',
  summary: '',
  prices: { small: 0, medium: 0, large: 0, xl: 0 },
  taxKey: '',
  needsTwoPeople: false,
  checks: [],
  steps: [freshStep],
}

interface Props {
  treatment: TreatmentView | undefined
  products: ProductView[]
}

/** One treatment: name and prices, the chain with the step chosen in it, and what else is said of the whole. */
export function TreatmentEditor({ treatment, products }: Props) {
  const { name, summary, prices, taxKey, needsTwoPeople, checks, steps } = treatment ?? fresh
  const form = useRowForm<Fields>(
    'treatments',
    treatment,
    { name, summary, prices, taxKey, needsTwoPeople, checks, steps },
    trpc.treatments.save.mutationOptions(),
  )
  const { value: now, change, faults } = form
  const price = form.within('prices')
  const offered = useQuery(trpc.bays.list.queryOptions()).data?.flatMap(bay => bay.offers) ?? []
  return (
    <RowEditor form={form} row={treatment} what={say('treatment')} api={trpc.treatments}>
      <div className={styles.head}>
        <TextInput label={say('Name')} autoFocus={!treatment} {...form.field('name')} />
        {sizeChoices.map(({ value: size, label }) => (
          <MoneyInput
            key={size}
            label={say('Price, {label}', { label: withinSentence(label) })}
            title={say('0 means no price')}
            {...price.field(size)}
          />
        ))}
      </div>
      <ChainEditor
        treatment={now}
        products={products}
        offered={offered}
        faults={faults}
        error={form.error}
        onChange={next => change({ steps: next })}
      />
      <Textarea label={say('What it is, for the customer')} autosize minRows={1} {...form.field('summary')} />
      <CheckFields
        checks={now.checks}
        fields={form.each('checks')}
        onChange={given => change({ checks: given })}
      />
      <TaxSelect label={say('Tax')} {...form.field('taxKey')} />
      <Checkbox
        label={say('Needs two people: no step is done by one alone')}
        {...form.tick('needsTwoPeople')}
      />
    </RowEditor>
  )
}
