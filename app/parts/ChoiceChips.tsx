import { Input } from '@mantine/core'
import { useId } from 'react'
import { Chip } from './Chip.tsx'
import styles from './ChoiceChips.module.css'

interface Props<T extends string> {
  label: string
  /** Leaves the label to screen readers, where a heading says it already. */
  hideLabel?: boolean
  choices: readonly { value: T; label: string; about?: string }[]
  value: readonly T[]
  onChange(value: T[]): void
  error?: string | undefined
}

/** Several of a few words, each on or off. */
export function ChoiceChips<T extends string>(props: Props<T>) {
  const { label, hideLabel = false, choices, value, onChange, error } = props
  const id = useId()
  const put = (choice: T, on: boolean) =>
    onChange(choices.map(each => each.value).filter(each => (each === choice ? on : value.includes(each))))
  return (
    <fieldset aria-label={label} aria-describedby={error ? id : undefined}>
      {!hideLabel && (
        <Input.Label component="span" mb={4}>
          {label}
        </Input.Label>
      )}
      <div className={styles.choices}>
        {choices.map(choice => (
          <Chip
            key={choice.value}
            type="checkbox"
            label={choice.label}
            about={choice.about}
            checked={value.includes(choice.value)}
            onChange={event => put(choice.value, event.currentTarget.checked)}
          />
        ))}
      </div>
      {error && (
        <Input.Error id={id} mt={4}>
          {error}
        </Input.Error>
      )}
    </fieldset>
  )
}
