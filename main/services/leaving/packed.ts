/** Everything, or everything about one person, as files to be packed into one. */
import { say } from '../../domain/language/index.ts'
import { cells, headings, record, schemaOf } from '../../domain/tables/index.ts'
import type { TablesRead } from '../../store/tables/readTables.ts'
import type { ZipEntry } from '../../store/tables/zip.ts'
import { ownPace, type Pace } from '../desk/beside.ts'
import { byteOrderMark, csvText } from '../desk/csv.ts'

type Table = TablesRead['tables'][number]

export interface Packing {
  read: TablesRead
  nowAt: number
  /** Counts the rows, page by page. Stopped, the files end with an error: half of them are none. */
  pace?: Pace
}

/** The files in the order they are packed: what to know first, the JSON with its schema, a CSV a table, kept files. */
export async function* packedFiles(packing: Packing): AsyncGenerator<ZipEntry> {
  const { read } = packing
  const rules = read.shop ?? { zone: 'UTC', currency: 'USD' }
  yield { name: `${say('READ ME')}.txt`, parts: [readMe(read.tables)] }
  yield { name: 'shop.schema.json', parts: [`${JSON.stringify(schemaOf(read.tables), null, 2)}\n`] }
  yield { name: 'shop.json', parts: json(packing, rules) }
  for (const table of read.tables)
    yield { name: `tables/${table.file}.csv`, parts: csv(packing, table, rules) }
  let number = 0
  for (const { name, bytes } of read.files())
    yield { name: `files/${++number} ${name.replaceAll(/[^\p{L}\p{N}.\- ]/gu, '_')}`, parts: [bytes] }
}

/** The pages of a table, with a breath between two so that nobody else's request waits for all of them. */
async function* pagesOf({ read, pace = ownPace() }: Packing, table: Table) {
  for (const page of read.pages(table)) {
    pace.done += page.length
    yield page
    if (!(await pace.turn())) throw new Error('the packing was stopped')
  }
}

type Rules = { zone: string; currency: string }

async function* csv(packing: Packing, table: Table, rules: Rules): AsyncGenerator<string> {
  yield byteOrderMark + csvText([headings(table, rules)])
  for await (const page of pagesOf(packing, table)) yield csvText(page.map(row => cells(table, row, rules)))
}

async function* json(packing: Packing, { zone, currency }: Rules): AsyncGenerator<string> {
  const { read, nowAt } = packing
  const head = JSON.stringify({ form: 1, madeAt: nowAt, zone, currency })
  yield `${head.slice(0, -1)},"tables":{`
  for (const [i, table] of read.tables.entries()) {
    yield `${i > 0 ? ',' : ''}\n${JSON.stringify(table.file)}:[`
    let between = '\n'
    for await (const page of pagesOf(packing, table)) {
      yield between + page.map(row => JSON.stringify(record(table, row))).join(',\n')
      between = ',\n'
    }
    yield ']'
  }
  yield '}}\n'
}

const readMe = (tables: readonly Table[]) =>
  byteOrderMark +
  [
    say('tables/ holds one list (CSV, RFC 4180, UTF-8 with a byte order mark) for each of:'),
    ...tables.map(({ file, about }) => `  ${file}.csv  ${about}`),
    '',
    say(
      'Times are ISO 8601 in the shop’s zone, money is decimal. Beside an id stands the name of what it points to.',
    ),
    say(
      'A text that a spreadsheet would run as a formula has an apostrophe in front: take one off to have it back.',
    ),
    '',
    say('shop.json holds the same as it is kept; shop.schema.json (JSON Schema) says what each field means.'),
    say('Passwords, keys and the secret parts of feeds and sensors are not in here.'),
    '',
  ].join('\r\n')
