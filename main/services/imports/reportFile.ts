/** What was left out of a file, as a list to mend it by. */
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { defused } from '../../domain/tables/index.ts'
import { byteOrderMark, csvText } from '../desk/csv.ts'
import type { Desk } from '../desk/desk.ts'
import { badLines, lastOutcome } from './importing.ts'

export async function importReportFile(desk: Desk) {
  const outcome = lastOutcome(desk.store)
  if (!outcome) refuse('missing', { file: null }, say('No file was looked through; choose it again.'))
  const lines = [
    ...badLines(outcome).map(({ row, column, value, fix }) => [String(row), column, value, fix]),
    ...outcome.planned.known.map(({ row, why }) => [String(row), '', '', why]),
    ...outcome.planned.notes.map(({ row, note }) => [String(row), '', '', note]),
  ]
  const text = csvText([
    [say('Row'), say('Column'), say('What stands there'), say('What to do')],
    ...lines.map(line => line.map(defused)),
  ])
  return {
    name: `${say('rows to look at')}.csv`,
    type: 'text/csv; charset=utf-8',
    keep: true,
    bytes: new TextEncoder().encode(byteOrderMark + text),
  }
}
