import { Button, Checkbox, Textarea, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { ProductView, TreatmentView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import type { TreatmentStep } from '../../../../main/domain/shop/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { MoneyInput } from '../../../parts/inputs.tsx'
import { moved } from '../../../parts/MoveArrows.tsx'
import { sizeChoices } from '../../../parts/shopWords.ts'
import { TaxSelect } from '../MoneySection.tsx'
import { RowEditor, useRowForm } from '../RowEditor.tsx'
import { CheckFields } from './CheckFields.tsx'
import { LaidOut } from './LaidOut.tsx'
import { StepEditor } from './StepEditor.tsx'
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

/** One treatment: name, prices, steps, and what they come to on a car. */
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
  const add = () => change({ steps: [...now.steps, { ...(now.steps.at(-1) ?? freshStep), name: '' }] })
  return (
    <RowEditor form={form} row={treatment} what={say('treatment')} api={trpc.treatments}>
      <TextInput label={say('Name')} maw={420} autoFocus={!treatment} {...form.field('name')} />
      <Textarea label={say('What it is, for the customer')} autosize minRows={1} {...form.field('summary')} />
      <fieldset className={styles.sizes}>
        <legend>{say('Price by size, 0 for not priced')}</legend>
        {sizeChoices.map(({ value: size, label }) => (
          <MoneyInput key={size} label={label} {...price.field(size)} />
        ))}
      </fieldset>
      <TaxSelect label={say('Tax')} {...form.field('taxKey')} />
      <Checkbox
        label={say('Needs two people: no step is done by one alone')}
        {...form.tick('needsTwoPeople')}
      />
      <CheckFields
        checks={now.checks}
        fields={form.each('checks')}
        onChange={given => change({ checks: given })}
      />
      {now.steps.map((step, i) => (
        <StepEditor
          // biome-ignore lint/suspicious/noArrayIndexKey: a step has no other name than its place
          key={i}
          index={i}
          count={now.steps.length}
          step={step}
          products={products}
          offered={offered}
          faults={faults}
          onChange={next => change({ steps: now.steps.with(i, next) })}
          onMove={by => change({ steps: moved(now.steps, i, by) })}
          onRemove={() => change({ steps: now.steps.toSpliced(i, 1) })}
        />
      ))}
      <div>
        <Button variant="default" onClick={add}>
          {say('Add a step')}
        </Button>
      </div>
      <LaidOut treatment={now} products={products} />
      {faults.at('steps') && <p role="alert">{faults.at('steps')}</p>}
    </RowEditor>
  )
}
