import { Checkbox, MultiSelect, Select } from '@mantine/core'
import { say } from '../../../../main/domain/language/index.ts'
import { bayFeatures, type TreatmentStep } from '../../../../main/domain/shop/index.ts'
import { fieldsOf } from '../../../data/fields.ts'
import { DecimalInput, DurationInput, OptionalDurationInput } from '../../../parts/inputs.tsx'
import { missedChoices } from '../../../parts/shopWords.ts'
import { featureText } from '../featureText.ts'
import styles from './Treatments.module.css'

/** What a step of this stage lays, if anything. */
export function laidBy({ stage }: TreatmentStep): 'coating' | 'topper' | null {
  return stage === 'coat' ? 'coating' : stage === 'topper' ? 'topper' : null
}

/** The fields every step has in sight; all others stand behind "More". */
const usual = /^(name|stage|productId|needs|skill|crew|minutes(\..+)?)$/

/** The step a refusal is about, and whether its field stands behind "More"; null where it is about none. */
export function refusedStep(field: string | null): { index: number; rare: boolean } | null {
  const parts = /^steps\.(\d+)\.(.+)$/.exec(field ?? '')
  return parts && { index: Number(parts[1]), rare: !usual.test(parts[2]!) }
}

const unsaid = { nextWithinMin: null, missed: null, missedMin: null }
const usualHelp: NonNullable<TreatmentStep['help']> = { crew: 1, from: 0, minutes: 60 }

interface Props {
  index: number
  step: TreatmentStep
  offered: readonly string[]
  errorAt(name: string): string | undefined
  put(part: Partial<TreatmentStep>): void
}

/** What few steps say: helpers, waits, how soon the next must follow, and what else the bay must have. */
export function StepRare({ index, step, offered, errorAt, put }: Props) {
  const now = { ...unsaid, ...step, help: step.help ?? usualHelp, asks: [...(step.asks ?? [])] }
  const fields = fieldsOf(now, put, errorAt)
  const help = fields.within('help')
  const first = index === 0
  return (
    <div className={styles.rare}>
      <div className={styles.switches}>
        <Checkbox label={say('May pause at closing')} {...fields.tick('splittable')} />
        <Checkbox label={say('Longer on worn paint')} {...fields.tick('byCondition')} />
        <Checkbox label={say('Same bay as the step before')} disabled={first} {...fields.tick('sameBay')} />
      </div>
      <div className={styles.fields}>
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
        <OptionalDurationInput
          label={say('Next step within')}
          placeholder={laidBy(step) ? say('as its product says') : say('no limit')}
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
        <DecimalInput
          label={say('Helpers')}
          least={0}
          most={6}
          whole
          value={step.help?.crew ?? 0}
          onChange={crew => put({ help: crew ? { ...now.help, crew } : null })}
          error={errorAt('help.crew')}
        />
        {step.help && (
          <>
            <DurationInput label={say('Help comes after')} {...help.field('from')} />
            <DurationInput label={say('Help stays')} {...help.field('minutes')} />
          </>
        )}
        <MultiSelect
          label={say('And must have')}
          placeholder={now.asks.length === 0 ? say('Nothing more') : ''}
          data={[...new Set([...bayFeatures, ...offered, ...now.asks])]
            .map(value => ({ value, label: featureText(value) }))
            .sort((a, b) => (a.label < b.label ? -1 : 1))}
          {...fields.field('asks')}
        />
      </div>
    </div>
  )
}
