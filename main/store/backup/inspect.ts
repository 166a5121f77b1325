import Database from 'better-sqlite3'
import type { Holdings } from '../../domain/backup/index.ts'

/** What was found in a database file, read from end to end. */
export interface Findings {
  /** What is wrong with it, as SQLite says it; null: nothing. The rest was then not looked for. */
  fault: string | null
  /** The id by which this shop's database is known: the one its first migration was given, at random. Null: it had none. */
  shopId: string | null
  /** The migrations it has had, in order. */
  schema: string[]
  /** Rows by table. */
  tables: Record<string, number>
  holdings: Holdings
  /** The photos its rows name, each once, by their hashes in hex. */
  photos: string[]
}

/** A place held for a caller, or let go again, is no job yet. */
const booked = "status not in ('held', 'lapsed')"

const nothing: Omit<Findings, 'fault'> = {
  shopId: null,
  schema: [],
  tables: {},
  holdings: { shop: null, customers: 0, vehicles: 0, jobs: 0, lastJob: null, lastSavedAt: null },
  photos: [],
}

/**
 * How much is looked at: `all`, or all but whether each index names the rows of its table, which takes most of the time.
 * That is left out where every byte was held against the hash of a database that was looked over wholly.
 */
export type Depth = 'all' | 'hashed'

/**
 * Reads the whole database and every link between its rows, and counts them. It is opened for reading only, so that a
 * damaged file, or a log beside it that is another's, is left as it is. Throws what SQLite throws where it cannot be
 * opened at all.
 */
export function inspect(file: string, depth: Depth = 'all'): Findings {
  const database = new Database(file, { readonly: true, fileMustExist: true })
  try {
    const fault = faultOf(database, depth)
    return fault === null ? { fault, ...contents(database) } : { fault, ...nothing }
  } finally {
    database.close()
  }
}

function faultOf(database: Database.Database, depth: Depth): string | null {
  const check = depth === 'all' ? 'integrity_check' : 'quick_check'
  const first = database.pragma(`${check}(1)`, { simple: true })
  if (first !== 'ok') return String(first ?? 'unreadable')
  const [stray] = database.pragma('foreign_key_check') as { table: string; parent: string }[]
  return stray ? `a row of ${stray.table} belongs to no ${stray.parent}` : null
}

/** The id by which a shop's database is known; null for one that is not ours, or not made yet. */
export function shopIdOf(database: Database.Database): string | null {
  if (!hasTable(database, '_prisma_migrations')) return null
  const id = database
    .prepare('select id from _prisma_migrations order by migration_name limit 1')
    .pluck()
    .get()
  return typeof id === 'string' ? id : null
}

function contents(database: Database.Database): Omit<Findings, 'fault'> {
  const names = database
    .prepare("select name from sqlite_master where type = 'table' and name not like 'sqlite_%' order by name")
    .pluck()
    .all() as string[]
  const tables = Object.fromEntries(
    names.map(name => [name, database.prepare(`select count(*) from "${name}"`).pluck().get() as number]),
  )
  const shopId = shopIdOf(database)
  return {
    shopId,
    schema:
      shopId === null
        ? []
        : (database
            .prepare('select migration_name from _prisma_migrations where rolled_back_at is null order by 1')
            .pluck()
            .all() as string[]),
    tables,
    holdings: {
      shop: one(database, 'Shop', 'select name, zone from Shop'),
      customers: tables.Customer ?? 0,
      vehicles: tables.Vehicle ?? 0,
      jobs:
        one<{ count: number }>(database, 'Job', `select count(*) as count from Job where ${booked}`)?.count ??
        0,
      lastJob: one(
        database,
        'Job',
        `select number, dropOffAt from Job where ${booked} order by number desc limit 1`,
      ),
      lastSavedAt:
        one<{ at: number | null }>(database, 'AuditLine', 'select max(at) as at from AuditLine')?.at ?? null,
    },
    photos: hasTable(database, 'JobPhoto')
      ? (database.prepare('select distinct sha256 from JobPhoto').pluck().all() as string[])
      : [],
  }
}

function hasTable(database: Database.Database, name: string): boolean {
  return (
    database.prepare("select 1 from sqlite_master where type = 'table' and name = ?").get(name) !== undefined
  )
}

function one<Row>(database: Database.Database, table: string, sql: string): Row | null {
  return hasTable(database, table) ? ((database.prepare(sql).get() as Row | undefined) ?? null) : null
}
