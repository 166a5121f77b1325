import { Button, Group } from '@mantine/core'
import type { ImportStandsView } from '../../../main/api/views.ts'
import { localeNow, say } from '../../../main/domain/language/index.ts'
import { Card } from '../../parts/Card.tsx'
import { DocumentButton } from '../../parts/DocumentButton.tsx'
import { HeadRow } from '../../parts/HeadRow.tsx'
import pieces from '../../parts/pieces.module.css'
import { Scrolled } from '../../parts/Scrolled.tsx'
import table from '../../parts/table.module.css'
import styles from './Imports.module.css'

type Found = NonNullable<ImportStandsView['report']>

const count = (n: number) => n.toLocaleString(localeNow())
const rows = (n: number) => say('{n, plural, one {1 row} other {{n2} rows}}', { n, n2: count(n) })

/** What becomes, or became, of the rows: how many come in, and every one that does not, with what to do about it. */
export function Report({ report, onDone }: { report: Found; onDone(): void }) {
  const { added, owners, bad, known, importId, badRows, knownRows, notes } = report
  const more = bad + known + notes.length > 0
  return (
    <Card
      title={
        importId === null
          ? say('{added} can be taken in', { added: rows(added) })
          : say('{added} taken in', { added: rows(added) })
      }
    >
      <p role="status">
        {[
          owners > 0 && say('{owners} owners are written down with them.', { owners: count(owners) }),
          known > 0 && say('{known} left as they are: on file already.', { known: rows(known) }),
          bad > 0 && say('{bad} left out: mend them in the file and take it in again.', { bad: rows(bad) }),
          bad + known === 0 && say('Nothing is left out.'),
        ]
          .filter(Boolean)
          .join(' ')}
      </p>
      <Group>
        {more && (
          <DocumentButton path="/documents/rows-to-look-at.csv">
            {say('Save these rows as a list')}
          </DocumentButton>
        )}
        {importId !== null && <Button onClick={onDone}>{say('Take in another list')}</Button>}
      </Group>
      {badRows.length > 0 && (
        <Scrolled label={say('Rows left out')}>
          <table className={`${table.table} ${styles.wide}`}>
            <HeadRow columns={[say('Row'), say('Column'), say('What stands there'), say('What to do')]} />
            <tbody>
              {badRows.map(({ row, column, value, fix }) => (
                <tr key={`${row} ${column} ${fix}`}>
                  <td>{row}</td>
                  <td>{column}</td>
                  <td>
                    <bdi>{value}</bdi>
                  </td>
                  <td>{fix}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {bad > badRows.length && <p className={pieces.soft}>{say('and more: the list has them all')}</p>}
        </Scrolled>
      )}
      <More title={say('On file already')} lines={knownRows.map(({ row, why }) => ({ row, words: why }))} />
      <More
        title={say('Taken in, and worth a look')}
        lines={notes.map(({ row, note }) => ({ row, words: note }))}
      />
    </Card>
  )
}

function More({ title, lines }: { title: string; lines: { row: number; words: string }[] }) {
  if (lines.length === 0) return null
  return (
    <details>
      <summary>
        {title} ({count(lines.length)})
      </summary>
      <ul className={pieces.list}>
        {lines.map(({ row, words }) => (
          <li key={`${row} ${words}`}>{say('Row {row}: {words}', { row, words })}</li>
        ))}
      </ul>
    </details>
  )
}
