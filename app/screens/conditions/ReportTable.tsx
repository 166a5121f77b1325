import { Table } from '@mantine/core'
import type { ImportReport } from '../../../main/api/views.ts'
import styles from './Conditions.module.css'

const shownMost = 200

/** What became of a file: how much was kept, and each row that was not, with the reason. */
export function ReportTable({ report }: { report: ImportReport }) {
  const { rows, added, duplicates, outOfOrder, refused } = report
  const count = (n: number) => n.toLocaleString('en-GB')
  return (
    <div role="status">
      <h3>
        {count(added)} of {count(rows)} rows kept
      </h3>
      <p className={styles.soft}>
        {duplicates > 0 && `${count(duplicates)} of a minute that was known already; the colder one stands. `}
        {outOfOrder > 0 && `${count(outOfOrder)} out of order; put in their place. `}
        {refused.length === 0 ? 'No row was refused.' : `${count(refused.length)} refused:`}
      </p>
      {refused.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys
        <section className={styles.report} tabIndex={0} aria-label="Rows refused">
          <Table verticalSpacing={2}>
            <Table.Thead>
              <Table.Tr>
                <Table.Th>Row</Table.Th>
                <Table.Th>Value</Table.Th>
                <Table.Th>Why</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {refused.slice(0, shownMost).map(row => (
                <Table.Tr key={row.row}>
                  <Table.Td>{row.row}</Table.Td>
                  <Table.Td>{String(row.value)}</Table.Td>
                  <Table.Td>{row.message.replace(/^Row \d+: /, '')}</Table.Td>
                </Table.Tr>
              ))}
            </Table.Tbody>
          </Table>
          {refused.length > shownMost && (
            <p className={styles.soft}>and {count(refused.length - shownMost)} more</p>
          )}
        </section>
      )}
    </div>
  )
}
