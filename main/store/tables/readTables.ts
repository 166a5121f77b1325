import { dirname } from 'node:path'
import Database from 'better-sqlite3'
import type { RowRead, Value } from '../../domain/tables/index.ts'
import { photoBytes } from '../photos/photoFiles.ts'
import { personRows } from './personRows.ts'
import { type Table, tablesOf } from './shapes.ts'

/** Rows read at once: a few milliseconds, so that whoever asks meanwhile does not wait. */
const rowsAtOnce = 100

export interface TablesRead {
  readonly tables: readonly Table[]
  /** The shop's zone and currency; null before it was set up. */
  readonly shop: { zone: string; currency: string; name: string } | null
  /** How many rows there are to read, at most. */
  count(table: Table): number
  /** All rows in the order they were written down, a page at a time. */
  pages(table: Table): Generator<RowRead[]>
  /** The photos, and of everything also the files kept in the database, one at a time. */
  files(): Generator<{ name: string; bytes: Uint8Array }>
  close(): void
}

/**
 * The tables as they are at this moment, on a connection of its own that holds on to what it saw first while others go on
 * writing. With a customer's id only the rows about them, and only the tables that have any.
 */
export function readTables(file: string, customerId?: string): TablesRead {
  const database = new Database(file, { readonly: true, fileMustExist: true, timeout: 10_000 })
  database.exec('begin')
  const whole = customerId === undefined
  const where = (model: string) => (whole ? 'true' : `(${personRows[model]})`)
  const bound = whole ? {} : { id: customerId }
  const all = tablesOf(database).filter(({ model }) => whole || personRows[model] !== undefined)
  // Of a whole table its last row's number, which is there at once; ten years of readings take a second to count.
  const size = whole ? 'coalesce(max(rowid), 0)' : 'count(*)'
  const count = ({ model }: Table) =>
    database
      .prepare(`select ${size} from "${model}" t where ${where(model)}`)
      .pluck()
      .get(bound) as number
  const shop = database.prepare('select "zone", "currency", "name" from "Shop"').get() as TablesRead['shop']
  return {
    tables: whole ? all : all.filter(table => count(table) > 0),
    shop: shop ?? null,
    count,
    *pages(table) {
      const named = Object.entries(table.nameSql)
      const columns = table.columns.map(({ name }) => `t."${name}"`)
      const names = named.map(([, sql], i) => `${sql} as "#${i}"`)
      const page = database.prepare(
        `select t.rowid as "#", ${[...columns, ...names].join(', ')} from "${table.model}" t ` +
          `where t.rowid > @after and ${where(table.model)} order by t.rowid limit ${rowsAtOnce}`,
      )
      for (let after = 0; ; ) {
        const rows = page.all({ ...bound, after }) as Record<string, Value>[]
        if (rows.length === 0) return
        yield rows.map(values => ({
          values,
          names: Object.fromEntries(named.map(([column], i) => [column, values[`#${i}`] ?? null])),
        }))
        after = Number(rows.at(-1)?.['#'])
      }
    },
    *files() {
      const photos = database
        .prepare(`select "name", "sha256" from "JobPhoto" where ${where('JobPhoto')} order by rowid`)
        .all(bound) as { name: string; sha256: string }[]
      for (const { name, sha256 } of photos) {
        const bytes = photoBytes(dirname(file), sha256)
        if (bytes) yield { name: `${name.replace(/\.\w+$/, '')}.jpg`, bytes }
      }
      if (!whole) return
      for (const id of database.prepare('select "id" from "StoredFile" order by rowid').pluck().all())
        yield database.prepare('select "name", "bytes" from "StoredFile" where "id" = ?').get(id) as {
          name: string
          bytes: Uint8Array
        }
    },
    close: () => database.close(),
  }
}
