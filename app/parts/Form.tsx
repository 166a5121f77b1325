import { type FormEvent, type ReactNode, useEffect, useRef } from 'react'

interface Props {
  onSave(): void
  label: string
  /** The last refusal: the field it names is gone to. */
  error: unknown
  children: ReactNode
}

/**
 * A form that saves with Enter or its button. A field whose text cannot be read (`data-unreadable`) is gone to instead:
 * its words already stand beside it, and nothing half-read is ever sent.
 */
export function Form({ onSave, label, error, children }: Props) {
  const form = useRef<HTMLFormElement>(null)
  useEffect(() => {
    if (error) form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus()
  }, [error])
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    event.stopPropagation()
    const unreadable = event.currentTarget.querySelector<HTMLElement>('[data-unreadable="true"]')
    if (unreadable) unreadable.focus()
    else onSave()
  }
  return (
    <form ref={form} onSubmit={submit} aria-label={label} noValidate>
      {children}
    </form>
  )
}
