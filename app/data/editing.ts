import { type MouseEvent, useState } from 'react'
import { mayLeave } from './unsaved.ts'

/**
 * Which row of a list is edited in place, by its id, or 'new'. Only the id is kept, so that the form is always given the
 * row as it is now. Before the form makes room for another one of its section it asks about what is not saved.
 */
export function useEditing() {
  const [editing, setEditing] = useState<string | null>(null)
  return {
    editing,
    edit: (id: string) => (event: MouseEvent) => {
      const part = event.currentTarget.closest('section, [role="dialog"]') ?? document.body
      void mayLeave(part).then(may => may && setEditing(id))
    },
    close: () => setEditing(null),
  }
}
