import { TextInput, type TextInputProps } from '@mantine/core'
import { useState } from 'react'

interface Props<T> extends Omit<TextInputProps, 'value' | 'onChange' | 'error'> {
  value: T
  onChange(value: T): void
  /** Undefined for text that cannot be read. */
  read(text: string): T | undefined
  show(value: T): string
  /** What to say about text that cannot be read. */
  remedy: string
  error?: string | undefined
}

/** A text field for a value that is written as people write it: read while typing, tidied on leaving. */
export function ReadInput<T>({ value, onChange, read, show, remedy, error, ...rest }: Props<T>) {
  const [text, setText] = useState<string | null>(null)
  const unreadable = text !== null && read(text) === undefined
  return (
    <TextInput
      {...rest}
      value={text ?? show(value)}
      error={unreadable ? remedy : error}
      data-unreadable={unreadable}
      onChange={event => {
        const typed = event.currentTarget.value
        setText(typed)
        const now = read(typed)
        if (now !== undefined) onChange(now)
      }}
      onBlur={() => {
        if (!unreadable) setText(null)
      }}
    />
  )
}
