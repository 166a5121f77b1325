/** Which forms hold something that was typed and not saved, and the question before it would be lost. */

import { modals } from '@mantine/modals'
import { createElement } from 'react'
import { say } from '../../main/domain/language/index.ts'

const forms = new Map<Element, () => boolean>()

/** Watches a form while it is shown; gives back what ends that. */
export function watchForm(form: Element, isDirty: () => boolean): () => void {
  forms.set(form, isDirty)
  return () => void forms.delete(form)
}

/** The name of a form within this part of the page that holds something unsaved, text it could not read counted too. */
export function unsavedWithin(part: Element): string | null {
  for (const [form, isDirty] of forms)
    if (part.contains(form) && (isDirty() || form.querySelector('[data-unreadable="true"]')))
      return form.getAttribute('aria-label')
  return null
}

/** Whether what was typed in this part of the page may go: asks where there is any. */
export async function mayLeave(part: Element): Promise<boolean> {
  const name = unsavedWithin(part)
  if (name === null) return true
  return new Promise(resolve =>
    modals.openConfirmModal({
      title: say('Not saved yet'),
      children: createElement(
        'p',
        { style: { margin: 0 } },
        say('What you typed in “{name}” would be lost.', { name }),
      ),
      labels: { confirm: say('Leave without saving'), cancel: say('Stay here') },
      confirmProps: { color: 'red' },
      onConfirm: () => resolve(true),
      onCancel: () => resolve(false),
      onClose: () => resolve(false),
    }),
  )
}
