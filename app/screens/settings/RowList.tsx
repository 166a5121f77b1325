import { ActionIcon, Button, Switch } from '@mantine/core'
import { IconChevronDown, IconChevronUp } from '@tabler/icons-react'
import { Link, useNavigate } from '@tanstack/react-router'
import type { ReactNode } from 'react'
import styles from './RowList.module.css'

export interface ListRow {
  id: string
  name: string
  about: string
  archivedAt: number | null
}

interface Props {
  section: string
  /** One of them: "bay". */
  what: string
  rows: readonly ListRow[]
  chosenId: string | undefined
  /** Given where the order is the shop's to choose: the ids in use, in their new order. */
  onOrder?: (ids: string[]) => void
  archivedShown: boolean
  onShowArchived(shown: boolean): void
  /** What to say while there is none. */
  empty: string
  /** The editor of the chosen row. */
  children: ReactNode
}

/** A list on the left, the chosen row's editor on the right. */
export function RowList(props: Props) {
  const { section, what, rows, chosenId, onOrder, archivedShown, onShowArchived, empty, children } = props
  const navigate = useNavigate()
  const used = rows.filter(row => row.archivedAt === null).map(row => row.id)
  const move = (id: string, by: 1 | -1) => {
    const from = used.indexOf(id)
    const ids = used.filter(each => each !== id)
    ids.splice(from + by, 0, id)
    onOrder?.(ids)
  }
  return (
    <div className={styles.pair}>
      <div className={styles.side}>
        {rows.length === 0 && <p className={styles.empty}>{empty}</p>}
        <ul className={styles.rows} aria-label={`Every ${what}`}>
          {rows.map(row => {
            const place = used.indexOf(row.id)
            return (
              <li key={row.id} data-archived={row.archivedAt !== null}>
                <Link to="/settings/$section/$id" params={{ section, id: row.id }} className={styles.row}>
                  <b>{row.name}</b>
                  <small>{row.archivedAt === null ? row.about : 'archived'}</small>
                </Link>
                {onOrder && place >= 0 && used.length > 1 && (
                  <span className={styles.arrows}>
                    <ActionIcon
                      variant="subtle"
                      size="sm"
                      aria-label={`${row.name} further up`}
                      disabled={place === 0}
                      onClick={() => move(row.id, -1)}
                    >
                      <IconChevronUp size="1rem" />
                    </ActionIcon>
                    <ActionIcon
                      variant="subtle"
                      size="sm"
                      aria-label={`${row.name} further down`}
                      disabled={place === used.length - 1}
                      onClick={() => move(row.id, 1)}
                    >
                      <IconChevronDown size="1rem" />
                    </ActionIcon>
                  </span>
                )}
              </li>
            )
          })}
        </ul>
        <Button
          variant="default"
          onClick={() => navigate({ to: '/settings/$section/$id', params: { section, id: 'new' } })}
        >
          Add a {what}
        </Button>
        <Switch
          label="Archived ones too"
          checked={archivedShown}
          onChange={event => onShowArchived(event.currentTarget.checked)}
        />
      </div>
      <div className={styles.editor}>
        {chosenId ? children : <p className={styles.empty}>Choose a {what} to see and change it.</p>}
      </div>
    </div>
  )
}
