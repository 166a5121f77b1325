/**
 * Follows what each act changes, row by row, so that it can be taken back: temporary triggers of the writing connection
 * note every row as it was and as it is. They are made anew from the tables there are whenever the store is opened, so
 * no migration has to think of them, and they are rolled back with the act they belong to.
 */
import type Database from 'better-sqlite3'

/** Tables whose rows are nobody's act: the audit and the acts themselves, and what can always be worked out anew. */
export const unwatched: ReadonlySet<string> = new Set([
  'AuditLine',
  'Act',
  'ActRow',
  'PlanDue',
  'MoveCost',
  'CostPoint',
  'ShelfPlan',
])

/** Columns that are no part of what a row says: its count of edits goes on, and what a trigger keeps follows by itself. */
const leftOut: Readonly<Record<string, readonly string[]>> = { Lot: ['leftCenti'] }

/** An act that changes more rows than this is not kept to be taken back: it could not be looked over either. */
export const mostRows = 5_000

export interface WatchedTable {
  readonly name: string
  /** Its primary key. */
  readonly keys: readonly string[]
  /** What is kept of a row, in this order. */
  readonly columns: readonly string[]
  readonly versioned: boolean
}

interface Column {
  name: string
  pk: number
}

const quoted = (name: string) => `"${name}"`

/** The tables of the database that are watched, as they stand. */
export function watchedTables(database: Database.Database): ReadonlyMap<string, WatchedTable> {
  const names = database
    .prepare("select name from sqlite_master where type = 'table' order by name")
    .pluck()
    .all() as string[]
  return new Map(
    names
      .filter(name => !/^(sqlite_|_prisma)/.test(name) && !unwatched.has(name))
      .map(name => {
        const all = database.pragma(`table_info(${quoted(name)})`) as Column[]
        const keys = all
          .filter(column => column.pk > 0)
          .sort((a, b) => a.pk - b.pk)
          .map(column => column.name)
        const columns = all
          .map(column => column.name)
          .filter(column => column !== 'version' && !leftOut[name]?.includes(column))
        return [name, { name, keys, columns, versioned: all.some(column => column.name === 'version') }]
      }),
  )
}

/** A row's key, or a row, as SQL literals: every value comes back exactly as it was. */
export function literals(columns: readonly string[], of = ''): string {
  return `json_array(${columns.map(column => `quote(${of}${quoted(column)})`).join(', ')})`
}

/** The script that begins to follow; run once on the connection that writes. */
export function watchScript(tables: ReadonlyMap<string, WatchedTable>): string {
  const triggers = [...tables.values()].flatMap(({ name, keys, columns }) => {
    const trigger = (suffix: string, event: string, row: string) =>
      `create temp trigger "follow_${name}_${suffix}" after ${event} on main.${quoted(name)}
       when (select "on" from "follow") begin insert into "followed" values ('${name}', ${row}); end;`
    return [
      trigger('new', 'insert', `${literals(keys, 'new.')}, null, ${literals(columns, 'new.')}`),
      trigger(
        'changed',
        'update',
        `${literals(keys, 'old.')}, ${literals(columns, 'old.')}, ${literals(columns, 'new.')}`,
      ),
      trigger('gone', 'delete', `${literals(keys, 'old.')}, ${literals(columns, 'old.')}, null`),
    ]
  })
  return `pragma temp_store = memory;
    create temp table "follow" ("on" integer not null);
    insert into "follow" values (1);
    create temp table "followed" ("table" text, "key" text, "before" text, "after" text);
    ${triggers.join('\n')}
    create temp trigger "follow_ends" after insert on main."Act" begin
      insert into "ActRow" ("actId", "table", "key", "before", "after")
        select new."id", "table", "key", "before", "after" from "followed" where new."rows" > 0 order by rowid;
      delete from "followed";
    end;`
}
