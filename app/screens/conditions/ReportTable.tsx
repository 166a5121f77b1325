import type { ImportReport } from '../../../main/api/views.ts'
import { localeNow, say } from '../../../main/domain/language/index.ts'
import { HeadRow } from '../../parts/HeadRow.tsx'
import pieces from '../../parts/pieces.module.css'
import { Scrolled } from '../../parts/Scrolled.tsx'
import table from '../../parts/table.module.css'

const shownMost = 200

/** What became of a file: how much was kept, and each row that was not, with the reason. */
export function ReportTable({ report }: { report: ImportReport }) {
  const { rows, added, duplicates, outOfOrder, refused } = report
  const count = (n: number) => n.toLocaleString(localeNow())
  return (
    <div role="status">
      <h3>{say('{added} of {rows} rows kept', { added: count(added), rows: count(rows) })}</h3>
      <p className={pieces.soft}>
        {duplicates > 0 &&
          `${say('{duplicates} of a minute that was known already; the colder one stands.', { duplicates: count(duplicates) })} `}
        {outOfOrder > 0 &&
          `${say('{outOfOrder} out of order; put in their place.', { outOfOrder: count(outOfOrder) })} `}
        {refused.length === 0
          ? say('No row was refused.')
          : say('{refused} refused:', { refused: count(refused.length) })}
      </p>
      {refused.length > 0 && (
        <Scrolled label={say('Rows refused')}>
          <table className={table.table}>
            <HeadRow columns={[say('Row'), say('Value'), say('Why')]} />
            <tbody>
              {refused.slice(0, shownMost).map(row => (
                <tr key={row.row}>
                  <td>{row.row}</td>
                  <td>{String(row.value)}</td>
                  <td>{row.message.replace(/^\p{L}+ \d+: /u, '')}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {refused.length > shownMost && (
            <p className={pieces.soft}>
              {say('and {refused} more', { refused: count(refused.length - shownMost) })}
            </p>
          )}
        </Scrolled>
      )}
    </div>
  )
}
