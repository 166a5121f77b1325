import type { ImportReport } from '../../../main/api/views.ts'
import { HeadRow } from '../../parts/HeadRow.tsx'
import pieces from '../../parts/pieces.module.css'
import { Scrolled } from '../../parts/Scrolled.tsx'
import table from '../../parts/table.module.css'

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
      <p className={pieces.soft}>
        {duplicates > 0 && `${count(duplicates)} of a minute that was known already; the colder one stands. `}
        {outOfOrder > 0 && `${count(outOfOrder)} out of order; put in their place. `}
        {refused.length === 0 ? 'No row was refused.' : `${count(refused.length)} refused:`}
      </p>
      {refused.length > 0 && (
        <Scrolled label="Rows refused">
          <table className={table.table}>
            <HeadRow columns={['Row', 'Value', 'Why']} />
            <tbody>
              {refused.slice(0, shownMost).map(row => (
                <tr key={row.row}>
                  <td>{row.row}</td>
                  <td>{String(row.value)}</td>
                  <td>{row.message.replace(/^Row \d+: /, '')}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {refused.length > shownMost && (
            <p className={pieces.soft}>and {count(refused.length - shownMost)} more</p>
          )}
        </Scrolled>
      )}
    </div>
  )
}
