import { ActionIcon, Checkbox, Select, TextInput } from '@mantine/core'
import { IconChevronDown, IconChevronUp, IconX } from '@tabler/icons-react'
import type { ProductView } from '../../../../main/api/views.ts'
import type { Capability, Skill, Stage, TreatmentStep } from '../../../../main/domain/shop/index.ts'
import type { Faults } from '../../../parts/faults.ts'
import { DecimalInput, DurationInput, OptionalDurationInput } from '../../../parts/inputs.tsx'
import { capabilityChoices, sizeChoices, skillChoices, stageChoices } from '../../../parts/shopWords.ts'
import styles from './Treatments.module.css'

interface Props {
  index: number
  count: number
  step: TreatmentStep
  products: ProductView[]
  faults: Faults
  onChange(step: TreatmentStep): void
  onMove(by: 1 | -1): void
  onRemove(): void
}

/** One hands-on step of a treatment. */
export function StepEditor({ index, count, step, products, faults, onChange, onMove, onRemove }: Props) {
  const put = (part: Partial<TreatmentStep>) => onChange({ ...step, ...part })
  const at = (field: string) => faults.at(`steps.${index}.${field}`)
  const title = `Step ${index + 1}`
  const lays = step.stage === 'coat' ? 'coating' : step.stage === 'topper' ? 'topper' : null
  const fitting = products.filter(product => (lays ? product.kind === lays : !product.cureProfile))
  return (
    <fieldset className={styles.step}>
      <legend>{title}</legend>
      <div className={styles.arrows}>
        <ActionIcon
          variant="subtle"
          aria-label={`${title} further up`}
          disabled={index === 0}
          onClick={() => onMove(-1)}
        >
          <IconChevronUp size="1.06rem" />
        </ActionIcon>
        <ActionIcon
          variant="subtle"
          aria-label={`${title} further down`}
          disabled={index === count - 1}
          onClick={() => onMove(1)}
        >
          <IconChevronDown size="1.06rem" />
        </ActionIcon>
        <ActionIcon
          variant="subtle"
          aria-label={`Take out ${title}`}
          disabled={count === 1}
          onClick={onRemove}
        >
          <IconX size="1.06rem" />
        </ActionIcon>
      </div>
      <div className={styles.fields}>
        <TextInput
          label="Name"
          value={step.name}
          onChange={event => put({ name: event.currentTarget.value })}
          error={at('name')}
        />
        <Select
          label="Stage"
          allowDeselect={false}
          data={stageChoices}
          value={step.stage}
          onChange={value => value && put({ stage: value as Stage, productId: null })}
          error={at('stage')}
        />
        <Select
          label={lays ? `The ${lays} laid` : 'Product used'}
          placeholder={lays ? 'Choose one' : 'None'}
          clearable={!lays}
          data={fitting.map(product => ({ value: product.id, label: product.name }))}
          value={step.productId}
          onChange={productId => put({ productId })}
          error={at('productId')}
        />
        <Select
          label="Bay must be"
          allowDeselect={false}
          data={capabilityChoices.map(({ value, label }) => ({ value, label }))}
          value={step.needs}
          onChange={value => value && put({ needs: value as Capability })}
          error={at('needs')}
        />
        <Select
          label="Skill"
          placeholder="Nobody is taken"
          clearable
          data={skillChoices}
          value={step.skill}
          onChange={value => put({ skill: value as Skill | null })}
          error={at('skill')}
        />
        <DecimalInput
          label="People"
          least={1}
          most={20}
          whole
          value={step.crew}
          onChange={crew => put({ crew })}
          error={at('crew')}
        />
        <OptionalDurationInput
          label="Waits at least"
          placeholder="no wait"
          disabled={index === 0}
          value={step.waitMin}
          onChange={waitMin => put({ waitMin })}
          error={at('waitMin')}
        />
        <OptionalDurationInput
          label="Waits at most"
          placeholder="no limit"
          disabled={index === 0}
          value={step.waitMax}
          onChange={waitMax => put({ waitMax })}
          error={at('waitMax')}
        />
      </div>
      <div className={styles.fields}>
        {sizeChoices.map(({ value: size, label }) => (
          <DurationInput
            key={size}
            label={`Takes, ${label.toLowerCase()}`}
            value={step.minutes[size]}
            onChange={minutes => put({ minutes: { ...step.minutes, [size]: minutes } })}
            error={at(`minutes.${size}`)}
          />
        ))}
      </div>
      <div className={styles.switches}>
        <Checkbox
          label="May pause at closing"
          checked={step.splittable}
          onChange={event => put({ splittable: event.currentTarget.checked })}
        />
        <Checkbox
          label="Longer on worn paint"
          checked={step.byCondition}
          onChange={event => put({ byCondition: event.currentTarget.checked })}
        />
        <Checkbox
          label="Same bay as the step before"
          disabled={index === 0}
          checked={step.sameBay}
          onChange={event => put({ sameBay: event.currentTarget.checked })}
        />
      </div>
    </fieldset>
  )
}
