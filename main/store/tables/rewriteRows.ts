/** Text rewritten wherever it stands: in the rows about a person, and in any other that names them. */
import { setImmediate } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { rewritten } from '../../domain/tables/index.ts'
import type { Tx } from '../store.ts'
import { personRows } from './personRows.ts'

/** How the texts of a table's rows are rewritten; `field` is the column, or the field of the JSON in it. */
export type Rewrite = (text: string, at: { table: string; column: string; field: string }) => string

interface TextTable {
  table: string
  texts: string[]
  json: string[]
}

/** Rows of any table that may hold one of these texts. */
export type Hits = ReadonlyMap<string, readonly number[]>

/** Looked through at once: some milliseconds. */
const rowsAtOnce = 500

/** Who did it, and what it is filed under, is never rewritten: the crew has names too. */
const stays = new Set(['who', 'by', 'signedBy', 'act', 'entity', 'kind', 'productName', 'warnings'])

function textTables(database: Database.Database): TextTable[] {
  const names = database
    .prepare("select name from sqlite_master where type = 'table'")
    .pluck()
    .all() as string[]
  return names
    .filter(table => !/^(sqlite_|_prisma)/.test(table))
    .map(table => {
      const columns = database.pragma(`table_info("${table}")`) as { name: string; type: string }[]
      const of = (type: string) =>
        columns.filter(column => column.type === type && !stays.has(column.name)).map(({ name }) => name)
      return { table, texts: of('TEXT'), json: of('JSONB') }
    })
}

function opened<T>(file: string, work: (database: Database.Database) => T): T {
  const database = new Database(file, { readonly: true, fileMustExist: true, timeout: 10_000 })
  try {
    return work(database)
  } finally {
    database.close()
  }
}

/**
 * Every row whose text holds one of these parts, capitals of plain letters aside: looked through beside the desk, page by
 * page, because ten years are too much to read inside an act.
 */
export async function rowsWith(file: string, texts: readonly string[]): Promise<Hits> {
  const hits = new Map<string, number[]>()
  if (texts.length === 0) return hits
  const like = texts.map(text => `%${text.replaceAll(/[\\%_]/g, '\\$&')}%`)
  const database = new Database(file, { readonly: true, fileMustExist: true, timeout: 10_000 })
  try {
    for (const { table, texts: columns, json } of textTables(database)) {
      const all = [...columns, ...json].map(name => `coalesce("${name}", '')`)
      if (all.length === 0) continue
      const last = database.prepare(`select max(rowid) from "${table}"`).pluck().get() as number | null
      const page = database
        .prepare(
          `select rowid from "${table}" where rowid > ? and rowid <= ? and ` +
            `(${like.map(() => `${all.join(` || char(10) || `)} like ? escape '\\'`).join(' or ')})`,
        )
        .pluck()
      for (let after = 0; after < (last ?? 0); after += rowsAtOnce) {
        const found = page.all(after, after + rowsAtOnce, ...like) as number[]
        if (found.length > 0) hits.set(table, [...(hits.get(table) ?? []), ...found])
        await setImmediate()
      }
    }
  } finally {
    database.close()
  }
  return hits
}

/** Rewrites the rows about a person with `own`, and those found elsewhere with `other`; gives the number changed by table. */
export async function rewriteRows(
  tx: Tx,
  file: string,
  { customerId, hits, own, other }: { customerId: string; hits: Hits; own: Rewrite; other: Rewrite },
): Promise<Map<string, number>> {
  const changed = new Map<string, number>()
  for (const { table, texts, json } of opened(file, textTables)) {
    const rewriteIn = async (where: string, values: readonly unknown[], rewrite: Rewrite) => {
      const columns = [...texts, ...json]
      const selected = columns.map((name, i) => `cast("${name}" as text) as "c${i}"`).join(', ')
      const rows = await tx.$queryRawUnsafe<Record<string, string | number | bigint | null>[]>(
        `select rowid as "n", ${selected} from "${table}" where ${where}`,
        ...values,
      )
      for (const row of rows) {
        const fresh = columns.flatMap((column, i) => {
          const was = row[`c${i}`]
          if (typeof was !== 'string') return []
          const said = (text: string, field: string) => rewrite(text, { table, column, field })
          const now = json.includes(column)
            ? JSON.stringify(rewritten(JSON.parse(was), said, column))
            : said(was, column)
          return now === was ? [] : [[column, now] as const]
        })
        if (fresh.length === 0) continue
        await tx.$executeRawUnsafe(
          `update "${table}" set ${fresh.map(([column]) => `"${column}" = ?`).join(', ')} where rowid = ?`,
          ...fresh.map(([, now]) => now),
          Number(row.n),
        )
        changed.set(table, (changed.get(table) ?? 0) + 1)
      }
    }
    const theirs = personRows[table]
    if (theirs !== undefined) {
      const marks = theirs.split('@id')
      await rewriteIn(marks.join('?'), Array(marks.length - 1).fill(customerId), own)
    }
    const ids = hits.get(table) ?? []
    for (let i = 0; i < ids.length; i += 500) {
      const some = ids.slice(i, i + 500)
      await rewriteIn(`rowid in (${some.map(() => '?').join(', ')})`, some, other)
    }
  }
  return changed
}
