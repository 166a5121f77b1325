import { type FormEvent, type ReactNode, useEffect, useRef } from 'react'
import type { FormState } from '../../data/form.ts'
import { watchForm } from '../../data/unsaved.ts'
import { Boundary } from '../Boundary.tsx'
import { FormFoot } from './FormFoot.tsx'

interface Props {
  form: FormState
  label: string
  /** What the button that saves says; null where it stands elsewhere. */
  save?: string | null
  /** Whether there is anything to save, where the form's own answer is not enough. */
  ready?: boolean
  /** Leaves the filled button to another act of its screen. */
  quiet?: boolean
  onCancel?: () => void
  /** Further buttons beside the one that saves. */
  more?: ReactNode
  children: ReactNode
}

/**
 * A form that saves with Enter or its button. A field whose text cannot be read (`data-unreadable`) is gone to instead:
 * its words already stand beside it, and nothing half-read is ever sent.
 */
export function Form({ form, label, save, ready, quiet, onCancel, more, children }: Props) {
  const element = useRef<HTMLFormElement>(null)
  const { error } = form
  useEffect(() => {
    if (error) element.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus()
  }, [error])
  const isDirty = useRef(form.isDirty)
  isDirty.current = form.isDirty
  useEffect(() => (element.current ? watchForm(element.current, () => isDirty.current()) : undefined), [])
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    event.stopPropagation()
    const unreadable = event.currentTarget.querySelector<HTMLElement>('[data-unreadable="true"]')
    if (unreadable) unreadable.focus()
    else form.submit()
  }
  return (
    <form ref={element} onSubmit={submit} aria-label={label} noValidate>
      <Boundary key={form.fills} drawnFor={form.value} back={form.back}>
        {children}
      </Boundary>
      <FormFoot form={form} label={save} ready={ready} quiet={quiet} onCancel={onCancel}>
        {more}
      </FormFoot>
    </form>
  )
}
