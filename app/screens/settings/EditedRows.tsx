import { Button, Group } from '@mantine/core'
import { type ReactNode, useId } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import { useEditing } from '../../data/editing.ts'
import { type SavingOptions, useSaving } from '../../data/saving.ts'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'

interface SavedRow {
  id: string
  version: number
}

interface Props<Row extends SavedRow> {
  title: string
  empty: string
  rows: readonly Row[]
  /** What a row is called where somebody only hears its buttons. */
  nameOf(row: Row): string
  wordsOf(row: Row): ReactNode
  remove: SavingOptions<{ id: string; version: number }>
  addLabel: string
  /** What a new row begins with is known. */
  ready: boolean
  /** Beside the button that adds one. */
  more?: ReactNode
  /** The form of a row, or of a new one. */
  form(row: Row | undefined, close: () => void): ReactNode
}

/** Rows that are changed where they stand or taken out, and the way to add one. */
export function EditedRows<Row extends SavedRow>(props: Props<Row>) {
  const { title, empty, rows, nameOf, wordsOf, addLabel, ready, more, form } = props
  const id = useId()
  const removing = useSaving(props.remove)
  const { editing, edit, close } = useEditing()
  return (
    <section className={pieces.card} aria-labelledby={id}>
      <h3 id={id}>{title}</h3>
      {rows.length === 0 && editing === null && <p className={pieces.soft}>{empty}</p>}
      <ul className={pieces.list}>
        {rows.map(row => (
          <li key={row.id}>
            <span className={pieces.grow}>{wordsOf(row)}</span>
            <RowButton does={say('Change')} of={nameOf(row)} onClick={edit(row.id)} />
            <RowButton
              does={say('Remove')}
              of={nameOf(row)}
              variant="subtle"
              onClick={() => removing.save({ id: row.id, version: row.version })}
            />
          </li>
        ))}
      </ul>
      <Refused of={removing.error} />
      {editing !== null && ready ? (
        <div key={editing}>
          {form(
            rows.find(row => row.id === editing),
            close,
          )}
        </div>
      ) : (
        <Group mt="md">
          <Button variant="default" disabled={!ready} onClick={edit('new')}>
            {addLabel}
          </Button>
          {more}
        </Group>
      )}
    </section>
  )
}
