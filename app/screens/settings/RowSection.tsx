import { Button, Stack, Switch } from '@mantine/core'
import { Link, useNavigate } from '@tanstack/react-router'
import { Fragment, type ReactNode } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import { type SavingOptions, useSaving } from '../../data/saving.ts'
import { HistoryCard } from '../../parts/HistoryLines.tsx'
import { MoveArrows, moved } from '../../parts/MoveArrows.tsx'
import pieces from '../../parts/pieces.module.css'
import type { SectionProps } from '../../parts/Sections.tsx'
import { Heading } from './Heading.tsx'
import styles from './RowSection.module.css'

/** What the lines about a section's rows are filed under. */
const filed: Readonly<Record<string, string>> = {
  bays: 'bay',
  crew: 'crew',
  lending: 'lendable',
  treatments: 'treatment',
  products: 'product',
}

interface ListRow {
  id: string
  name: string
  archivedAt: number | null
}

interface Props<Row extends ListRow> extends SectionProps {
  section: string
  title: string
  /** One of them: "bay". */
  what: string
  /** Undefined until all that the editor needs is known. */
  rows: readonly Row[] | undefined
  about(row: Row): string
  /** Given where the order is the shop's to choose; takes the ids in use, in their new order. */
  order?: SavingOptions<{ ids: string[] }>
  /** Whether archived rows are shown, and how to change that. */
  archived: [shown: boolean, show: (shown: boolean) => void]
  /** What to say while there is none. */
  empty: string
  /** The editor of a row, or of a new one. */
  editor(row: Row | undefined): ReactNode
  /** What they are for. */
  children: string
}

/** A section of rows: their list on the left, the editor of the chosen one on the right. */
export function RowSection<Row extends ListRow>(props: Props<Row>) {
  const { id, section, title, what, rows = [], about, order, archived, empty, editor, children } = props
  const navigate = useNavigate()
  const ordering = useSaving(order ?? {})
  const used = rows.filter(row => row.archivedAt === null).map(row => row.id)
  const chosen = rows.find(row => row.id === id)
  return (
    <>
      <Heading title={title}>{children}</Heading>
      <div className={pieces.side}>
        <div className={pieces.column}>
          {props.rows?.length === 0 && <p className={pieces.empty}>{empty}</p>}
          <ul
            className={`${pieces.rows} ${styles.list}`}
            data-chosen={chosen !== undefined}
            aria-label={say('Every {what}', { what })}
          >
            {rows.map(row => {
              const place = used.indexOf(row.id)
              return (
                <li key={row.id} data-archived={row.archivedAt !== null}>
                  <Link to="/settings/$section/$id" params={{ section, id: row.id }}>
                    <b>{row.name}</b>
                    <small>{row.archivedAt === null ? about(row) : say('archived')}</small>
                  </Link>
                  {order && place >= 0 && used.length > 1 && (
                    <Stack gap={0} px={4} justify="center">
                      <MoveArrows
                        of={row.name}
                        place={place}
                        count={used.length}
                        onMove={by => ordering.save({ ids: moved(used, place, by) })}
                      />
                    </Stack>
                  )}
                </li>
              )
            })}
          </ul>
          <Button
            variant="default"
            onClick={() => navigate({ to: '/settings/$section/$id', params: { section, id: 'new' } })}
          >
            {say('Add a {what}', { what })}
          </Button>
          <Switch
            label={say('Archived ones too')}
            checked={archived[0]}
            onChange={event => archived[1](event.currentTarget.checked)}
          />
        </div>
        <div className={pieces.column}>
          {chosen || (id === 'new' && props.rows) ? (
            <Fragment key={id}>
              {editor(chosen)}
              {chosen && filed[section] && <HistoryCard entities={[filed[section]]} id={chosen.id} />}
            </Fragment>
          ) : (
            <p className={pieces.empty}>{say('Choose a {what} to see and change it.', { what })}</p>
          )}
        </div>
      </div>
    </>
  )
}
