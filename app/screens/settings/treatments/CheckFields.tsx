import { Button, Group, Select, TextInput } from '@mantine/core'
import { IconX } from '@tabler/icons-react'
import { say } from '../../../../main/domain/language/index.ts'
import { type CarCheck, coatChecks, washChecks } from '../../../../main/domain/shop/index.ts'
import type { Fields } from '../../../data/fields.ts'
import { IconAct } from '../../../parts/IconAct.tsx'
import { checkMomentChoices } from '../../../parts/shopWords.ts'
import styles from './Treatments.module.css'

interface Props {
  checks: readonly CarCheck[]
  fields: Fields<CarCheck>[]
  onChange(checks: CarCheck[]): void
}

/** What is ticked off at the car around a treatment, and when. */
export function CheckFields({ checks, fields, onChange }: Props) {
  const usual = [...washChecks, ...coatChecks]
    .map(check => ({ ...check, words: say(check.words) }))
    .filter(({ words }) => !checks.some(check => check.words === words))
  return (
    <fieldset className={styles.step}>
      <legend>{say('Ticked off at the car')}</legend>
      {fields.map((check, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a check has no other name than its place
        <Group key={i} gap="sm" align="flex-end">
          <Select label={say('When')} data={checkMomentChoices} {...check.choice('moment')} />
          <TextInput label={say('Check {i}', { i: i + 1 })} flex={1} miw={200} {...check.field('words')} />
          <IconAct
            label={say('Take out check {i}', { i: i + 1 })}
            icon={IconX}
            onClick={() => onChange(checks.toSpliced(i, 1))}
          />
        </Group>
      ))}
      <Group gap="sm">
        <Button
          variant="default"
          size="compact-sm"
          onClick={() => onChange([...checks, { moment: 'handover', words: '' }])}
        >
          {say('Add a check')}
        </Button>
        {usual.length > 0 && (
          <Button variant="default" size="compact-sm" onClick={() => onChange([...checks, ...usual])}>
            {say('Add the usual ones (common practice)')}
          </Button>
        )}
      </Group>
    </fieldset>
  )
}
