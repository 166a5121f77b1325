import { Select, TextInput } from '@mantine/core'
import type { ProductView } from '../../../../main/api/views.ts'
import { say, withinSentence } from '../../../../main/domain/language/index.ts'
import type { Stage, TreatmentStep } from '../../../../main/domain/shop/index.ts'
import { fieldsOf } from '../../../data/fields.ts'
import type { Faults } from '../../../parts/faults.ts'
import { DecimalInput, DurationInput } from '../../../parts/inputs.tsx'
import { capabilityChoices, sizeChoices, skillChoices, stageChoices } from '../../../parts/shopWords.ts'
import { laidBy, StepRare } from './StepRare.tsx'
import styles from './Treatments.module.css'

interface Props {
  index: number
  step: TreatmentStep
  products: ProductView[]
  /** What the shop's bays offer, by its own names too. */
  offered: readonly string[]
  faults: Faults
  /** Whether it was just added, and waits for its name. */
  fresh: boolean
  more: boolean
  onMore(open: boolean): void
  onChange(step: TreatmentStep): void
}

/** The fields of the step that is chosen in the chain: what is asked of every step, and the rest behind "More". */
export function StepPanel(props: Props) {
  const { index, step, products, offered, faults, fresh, more, onMore, onChange } = props
  const put = (part: Partial<TreatmentStep>) => onChange({ ...step, ...part })
  const errorAt = (name: string) => faults.at(`steps.${index}.${name}`)
  const fields = fieldsOf(step, put, errorAt)
  const minutes = fields.within('minutes')
  const lays = laidBy(step)
  const fitting = products.filter(product => (lays ? product.kind === lays : !product.cureProfile))
  return (
    <>
      <div className={styles.fields}>
        <TextInput label={say('Name')} autoFocus={fresh} {...fields.field('name')} />
        <Select
          label={say('Stage')}
          data={stageChoices}
          {...fields.choice('stage')}
          onChange={value => value && put({ stage: value as Stage, productId: null })}
        />
        <Select
          label={
            lays === 'coating'
              ? say('The coating laid')
              : lays === 'topper'
                ? say('The topper laid')
                : say('Product used')
          }
          placeholder={lays ? say('Choose one') : say('None')}
          clearable={!lays}
          data={fitting.map(product => ({ value: product.id, label: product.name }))}
          {...fields.field('productId')}
        />
        <Select
          label={say('Bay must be')}
          data={capabilityChoices.map(({ value, label }) => ({ value, label }))}
          {...fields.choice('needs')}
        />
      </div>
      <div className={styles.takes}>
        {sizeChoices.map(({ value: size, label }) => (
          <DurationInput
            key={size}
            label={say('Takes, {label}', { label: withinSentence(label) })}
            {...minutes.field(size)}
          />
        ))}
        <Select
          label={say('Skill')}
          placeholder={say('Nobody is taken')}
          clearable
          data={skillChoices}
          {...fields.field('skill')}
        />
        <DecimalInput label={say('People')} least={1} most={20} whole {...fields.field('crew')} />
      </div>
      <details open={more} onToggle={event => onMore(event.currentTarget.open)}>
        <summary>{say('More: helpers, waits, missed windows, what the bay must have')}</summary>
        <StepRare index={index} step={step} offered={offered} errorAt={errorAt} put={put} />
      </details>
    </>
  )
}
