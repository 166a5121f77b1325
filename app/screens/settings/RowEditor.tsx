import { useNavigate } from '@tanstack/react-router'
import type { ReactNode } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import { type FormOf, type FormState, useForm } from '../../data/form.ts'
import type { SavingOptions } from '../../data/saving.ts'
import { ArchiveButton } from '../../parts/ArchiveButton.tsx'
import { Form } from '../../parts/form/Form.tsx'
import pieces from '../../parts/pieces.module.css'

interface SavedRow {
  id: string
  name: string
  version: number
  archivedAt: number | null
}

/** The form of a section's row; a new one is gone to once it is saved. */
export function useRowForm<T extends object>(
  section: string,
  row: SavedRow | undefined,
  saved: T,
  saving: SavingOptions<T & { id?: string; version?: number }, { id: string }>,
): FormOf<T> {
  const navigate = useNavigate()
  return useForm({
    saved,
    version: row?.version,
    saving,
    send: (value, version) => ({ ...value, ...(row && { id: row.id, version }) }),
    done: ({ id }) => {
      if (!row) void navigate({ to: '/settings/$section/$id', params: { section, id } })
    },
  })
}

interface Props {
  form: FormState
  row: SavedRow | undefined
  /** One of them: "bay". */
  what: string
  api: Parameters<typeof ArchiveButton>[0]['api']
  /** What the button that archives it says. */
  archive?: string
  more?: ReactNode
  /** What else belongs to a row that is there. */
  beside?: ReactNode
  children: ReactNode
}

/** One row of a section: its form, what else belongs to it, and the way to put it away. */
export function RowEditor({ form, row, what, api, archive, more, beside, children }: Props) {
  return (
    <>
      <div className={pieces.card}>
        <Form form={form} label={row ? row.name : say('A new {what}', { what })} more={more}>
          {children}
        </Form>
      </div>
      {beside}
      {row && <ArchiveButton row={row} api={api} label={archive ?? say('Archive this {what}', { what })} />}
    </>
  )
}
