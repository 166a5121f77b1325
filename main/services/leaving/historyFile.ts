/** The history as a list a spreadsheet opens, sent as it is read. */

import { Readable } from 'node:stream'
import { zonedOf } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { defused } from '../../domain/tables/index.ts'
import { byteOrderMark, csvText } from '../desk/csv.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { everyLine, todayOf } from '../history/history.ts'
import type { HistoryFilter } from '../history/inputs.ts'

const head = () => [say('When'), say('Who'), say('Kind'), say('Of'), say('Id'), say('What')]

export async function historyFile(desk: Desk, filter: HistoryFilter) {
  const { zone } = await shopOf(desk.store.read)
  async function* parts() {
    yield Buffer.from(byteOrderMark + csvText([head()]))
    for await (const lines of everyLine(desk, filter))
      yield Buffer.from(
        csvText(
          lines.map(({ at, who, entity, name, entityId, words }) => [
            zonedOf(at, zone).toString({ smallestUnit: 'minute', timeZoneName: 'never' }),
            ...[who, entity, name ?? '', entityId, words].map(defused),
          ]),
        ),
      )
  }
  return {
    name: `${say('history')} ${await todayOf(desk)}.csv`,
    type: 'text/csv; charset=utf-8',
    keep: true,
    bytes: Readable.toWeb(Readable.from(parts())) as ReadableStream<Uint8Array>,
  }
}
