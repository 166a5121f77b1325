import type { ReactNode } from 'react'
import pieces from './pieces.module.css'
import table from './table.module.css'

export interface Column<Row> {
  /** Left out in a table that needs no headings. */
  head?: ReactNode
  /** A heading that is only heard. */
  heard?: string
  /** Stands at the right edge, as numbers do. */
  number?: boolean
  className?: string | undefined
  cell(row: Row): ReactNode
  /** A second line beneath, in smaller words. */
  small?(row: Row): ReactNode
}

interface Props<Row> {
  rows: readonly Row[]
  keyOf(row: NoInfer<Row>): string | number
  columns: readonly Column<NoInfer<Row>>[]
  /** What is over is drawn softer. */
  past?(row: NoInfer<Row>): boolean
  /** In place of a table without rows. */
  empty?: ReactNode
}

/** A row each, a column for each thing said of it. */
export function Table<Row>({ rows, keyOf, columns, past, empty }: Props<Row>) {
  const classOf = ({ number, className }: Column<Row>) => (number ? table.number : className)
  if (rows.length === 0 && empty) return <p className={pieces.soft}>{empty}</p>
  return (
    <table className={table.table}>
      {columns.some(column => column.head !== undefined) && (
        <thead>
          <tr>
            {columns.map((column, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a column is its place
              <th key={i} scope="col" className={classOf(column)} aria-label={column.heard}>
                {column.head}
              </th>
            ))}
          </tr>
        </thead>
      )}
      <tbody>
        {rows.map(row => (
          <tr key={keyOf(row)} data-past={past?.(row)}>
            {columns.map((column, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a column is its place
              <td key={i} className={classOf(column)}>
                {column.cell(row)}
                {column.small && <small>{column.small(row)}</small>}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
