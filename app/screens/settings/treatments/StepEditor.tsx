import { Checkbox, MultiSelect, Select, TextInput } from '@mantine/core'
import { IconX } from '@tabler/icons-react'
import type { ProductView } from '../../../../main/api/views.ts'
import { say, withinSentence } from '../../../../main/domain/language/index.ts'
import { bayFeatures, type Stage, type TreatmentStep } from '../../../../main/domain/shop/index.ts'
import { fieldsOf } from '../../../data/fields.ts'
import type { Faults } from '../../../parts/faults.ts'
import { IconAct } from '../../../parts/IconAct.tsx'
import { DecimalInput, DurationInput, OptionalDurationInput } from '../../../parts/inputs.tsx'
import { MoveArrows } from '../../../parts/MoveArrows.tsx'
import {
  capabilityChoices,
  missedChoices,
  sizeChoices,
  skillChoices,
  stageChoices,
} from '../../../parts/shopWords.ts'
import { featureText } from '../featureText.ts'
import styles from './Treatments.module.css'

interface Props {
  index: number
  count: number
  step: TreatmentStep
  products: ProductView[]
  /** What the shop's bays offer, by its own names too. */
  offered: readonly string[]
  faults: Faults
  onChange(step: TreatmentStep): void
  onMove(by: 1 | -1): void
  onRemove(): void
}

const unsaid = { nextWithinMin: null, missed: null, missedMin: null }
const usualHelp: NonNullable<TreatmentStep['help']> = { crew: 1, from: 0, minutes: 60 }

/** One hands-on step of a treatment. */
export function StepEditor({
  index,
  count,
  step,
  products,
  offered,
  faults,
  onChange,
  onMove,
  onRemove,
}: Props) {
  const now = { ...unsaid, ...step, help: step.help ?? usualHelp, asks: [...(step.asks ?? [])] }
  const put = (part: Partial<TreatmentStep>) => onChange({ ...step, ...part })
  const fields = fieldsOf(now, put, name => faults.at(`steps.${index}.${name}`))
  const minutes = fields.within('minutes')
  const help = fields.within('help')
  const title = say('Step {index}', { index: index + 1 })
  const first = index === 0
  const lays = step.stage === 'coat' ? 'coating' : step.stage === 'topper' ? 'topper' : null
  const fitting = products.filter(product => (lays ? product.kind === lays : !product.cureProfile))
  return (
    <fieldset className={styles.step}>
      <legend>{title}</legend>
      <div className={styles.arrows}>
        <MoveArrows of={title} place={index} count={count} onMove={onMove} />
        <IconAct
          label={say('Take out {title}', { title })}
          icon={IconX}
          disabled={count === 1}
          onClick={onRemove}
        />
      </div>
      <div className={styles.fields}>
        <TextInput label={say('Name')} {...fields.field('name')} />
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
        <MultiSelect
          label={say('And must have')}
          placeholder={now.asks.length === 0 ? say('Nothing more') : ''}
          data={[...new Set([...bayFeatures, ...offered, ...now.asks])]
            .map(value => ({ value, label: featureText(value) }))
            .sort((a, b) => (a.label < b.label ? -1 : 1))}
          {...fields.field('asks')}
        />
        <Select
          label={say('Skill')}
          placeholder={say('Nobody is taken')}
          clearable
          data={skillChoices}
          {...fields.field('skill')}
        />
        <DecimalInput label={say('People')} least={1} most={20} whole {...fields.field('crew')} />
        <DecimalInput
          label={say('Helpers')}
          least={0}
          most={6}
          whole
          value={step.help?.crew ?? 0}
          onChange={crew => put({ help: crew ? { ...now.help, crew } : null })}
          error={faults.at(`steps.${index}.help.crew`)}
        />
        {step.help && (
          <>
            <DurationInput label={say('Help comes after')} {...help.field('from')} />
            <DurationInput label={say('Help stays')} {...help.field('minutes')} />
          </>
        )}
        <OptionalDurationInput
          label={say('Waits at least')}
          placeholder={say('no wait')}
          disabled={first}
          {...fields.field('waitMin')}
        />
        <OptionalDurationInput
          label={say('Waits at most')}
          placeholder={say('no limit')}
          disabled={first}
          {...fields.field('waitMax')}
        />
      </div>
      <div className={styles.fields}>
        <OptionalDurationInput
          label={say('Next step within')}
          placeholder={lays ? say('as its product says') : say('no limit')}
          description={step.stage === 'wipe' ? say('30 to 60 min, common practice') : undefined}
          {...fields.field('nextWithinMin')}
        />
        <Select
          label={say('If that is missed')}
          placeholder={say('Nothing is added')}
          clearable
          data={missedChoices}
          {...fields.field('missed')}
        />
        {(step.missed === 'abrade' || step.missed === 'redo') && (
          <OptionalDurationInput
            label={step.missed === 'abrade' ? say('Abrading takes') : say('Taking off takes')}
            placeholder="1 h"
            {...fields.field('missedMin')}
            value={step.missedMin ?? null}
          />
        )}
      </div>
      <div className={styles.fields}>
        {sizeChoices.map(({ value: size, label }) => (
          <DurationInput
            key={size}
            label={say('Takes, {label}', { label: withinSentence(label) })}
            {...minutes.field(size)}
          />
        ))}
      </div>
      <div className={styles.switches}>
        <Checkbox label={say('May pause at closing')} {...fields.tick('splittable')} />
        <Checkbox label={say('Longer on worn paint')} {...fields.tick('byCondition')} />
        <Checkbox label={say('Same bay as the step before')} disabled={first} {...fields.tick('sameBay')} />
      </div>
    </fieldset>
  )
}
