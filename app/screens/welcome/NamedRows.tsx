import { Stack, TextInput } from '@mantine/core'
import { IconX } from '@tabler/icons-react'
import { say } from '../../../main/domain/language/index.ts'
import { fieldsOf } from '../../data/fields.ts'
import { ChoiceChips } from '../../parts/ChoiceChips.tsx'
import type { Faults } from '../../parts/faults.ts'
import { IconAct } from '../../parts/IconAct.tsx'
import { RowButton } from '../../parts/RowButton.tsx'
import styles from './Welcome.module.css'

export interface Named<T extends string> {
  name: string
  can: T[]
}

interface Props<T extends string> {
  /** One of them: "bay". */
  what: string
  rows: Named<T>[]
  onChange(rows: Named<T>[]): void
  /** What a new row begins with. */
  fresh(count: number): Named<T>
  choices: readonly { value: T; label: string; about?: string }[]
  /** What the choices are to a row: "can be used for". */
  choicesLabel: string
  faults: Faults
  /** The names of the list and of its choices in the input that is saved. */
  fields: { list: string; choices: string }
  addLabel: string
}

/** A short list to name, each with a few words of what it is good for. */
export function NamedRows<T extends string>(props: Props<T>) {
  const { what, rows, onChange, fresh, choices, choicesLabel, faults, fields, addLabel } = props
  return (
    <Stack gap="0.625rem">
      {rows.map((row, i) => {
        const own = fieldsOf(
          row,
          part => onChange(rows.with(i, { ...row, ...part })),
          name => faults.at(`${fields.list}.${i}.${name}`),
        )
        const title = row.name.trim() || `${what} ${i + 1}`
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row has no other name than its place
          <div key={i} className={styles.row}>
            <TextInput
              aria-label={say('Name of {what} {i}', { what, i: i + 1 })}
              placeholder={say('Name')}
              {...own.field('name')}
            />
            <ChoiceChips
              label={`${title} ${choicesLabel}`}
              hideLabel
              choices={choices}
              {...own.field('can')}
              error={faults.under(`${fields.list}.${i}.${fields.choices}`)}
            />
            <IconAct
              label={say('Take out {title}', { title })}
              icon={IconX}
              mt={4}
              disabled={rows.length === 1}
              onClick={() => onChange(rows.toSpliced(i, 1))}
            />
          </div>
        )
      })}
      <div>
        <RowButton does={addLabel} onClick={() => onChange([...rows, fresh(rows.length)])} />
      </div>
    </Stack>
  )
}
