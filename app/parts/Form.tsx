import type { FormEvent, ReactNode } from 'react'

interface Props {
  onSave(): void
  label: string
  children: ReactNode
}

/**
 * A form that saves with Enter or its button. A field whose text cannot be read (`data-unreadable`) is gone to instead:
 * its words already stand beside it, and nothing half-read is ever sent.
 */
export function Form({ onSave, label, children }: Props) {
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    event.stopPropagation()
    const unreadable = event.currentTarget.querySelector<HTMLElement>('[data-unreadable="true"]')
    if (unreadable) unreadable.focus()
    else onSave()
  }
  return (
    <form onSubmit={submit} aria-label={label} noValidate>
      {children}
    </form>
  )
}
