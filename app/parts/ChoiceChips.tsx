import { Chip, Group, Input } from '@mantine/core'
import { useId } from 'react'
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
  return (
    <fieldset aria-label={label} aria-describedby={error ? id : undefined}>
      {!hideLabel && (
        <Input.Label component="span" mb={4}>
          {label}
        </Input.Label>
      )}
      <Chip.Group
        multiple
        value={[...value]}
        onChange={next => onChange(choices.map(choice => choice.value).filter(each => next.includes(each)))}
      >
        <Group gap={6} mih={36}>
          {choices.map(choice => (
            <Chip
              key={choice.value}
              value={choice.value}
              size="sm"
              classNames={{ label: styles.chip }}
              title={choice.about}
            >
              {choice.label}
            </Chip>
          ))}
        </Group>
      </Chip.Group>
      {error && (
        <Input.Error id={id} mt={4}>
          {error}
        </Input.Error>
      )}
    </fieldset>
  )
}
