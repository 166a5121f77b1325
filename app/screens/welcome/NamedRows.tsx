import { ActionIcon, Button, TextInput } from '@mantine/core'
import { IconX } from '@tabler/icons-react'
import { ChoiceChips } from '../../parts/ChoiceChips.tsx'
import type { Faults } from '../../parts/faults.ts'
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
  const put = (index: number, part: Partial<Named<T>>) =>
    onChange(rows.map((row, i) => (i === index ? { ...row, ...part } : row)))
  return (
    <div className={styles.rows}>
      {rows.map((row, i) => {
        const title = row.name.trim() || `${what} ${i + 1}`
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row has no other name than its place
          <div key={i} className={styles.row}>
            <TextInput
              aria-label={`Name of ${what} ${i + 1}`}
              placeholder="Name"
              value={row.name}
              onChange={event => put(i, { name: event.currentTarget.value })}
              error={faults.at(`${fields.list}.${i}.name`)}
            />
            <ChoiceChips
              label={`${title} ${choicesLabel}`}
              hideLabel
              choices={choices}
              value={row.can}
              onChange={can => put(i, { can })}
              error={faults.under(`${fields.list}.${i}.${fields.choices}`)}
            />
            <ActionIcon
              variant="subtle"
              mt={4}
              aria-label={`Take out ${title}`}
              disabled={rows.length === 1}
              onClick={() => onChange(rows.filter((_, index) => index !== i))}
            >
              <IconX size="1rem" />
            </ActionIcon>
          </div>
        )
      })}
      <div>
        <Button variant="default" size="compact-sm" onClick={() => onChange([...rows, fresh(rows.length)])}>
          {addLabel}
        </Button>
      </div>
    </div>
  )
}
