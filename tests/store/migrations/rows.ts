import Database from 'better-sqlite3'

export type Value = string | number | Buffer | null
export type Row = Record<string, Value>
/** Rows by table. */
export type Rows = Record<string, Row[]>

interface Column {
  name: string
  type: string
  notnull: number
  dflt_value: string | null
  pk: number
}

function open<T>(file: string, work: (database: Database.Database) => T): T {
  const database = new Database(file)
  try {
    return work(database)
  } finally {
    database.close()
  }
}

function tablesOf(database: Database.Database): string[] {
  const all = database
    .prepare("select name from sqlite_master where type = 'table' order by name")
    .pluck()
    .all()
  return (all as string[]).filter(name => !/^(sqlite_|_prisma)/.test(name))
}

/** What tells the numbers of a column, all of them past a hundred thousand times their row, from another's. */
export function mark(table: string, column: string): number {
  return [...(table + column)].reduce((sum, c) => sum + c.charCodeAt(0), 0)
}

/** What stands in a column of the row of that number: its own words, or the key of the row it belongs to. */
function valueIn(database: Database.Database, table: string, column: Column, row: number): Value {
  const links = database.pragma(`foreign_key_list("${table}")`) as {
    from: string
    table: string
    to: string
  }[]
  const link = links.find(({ from }) => from === column.name)
  if (link) {
    const theirs = database.pragma(`table_info("${link.table}")`) as Column[]
    return valueIn(database, link.table, theirs.find(({ name }) => name === link.to)!, row)
  }
  // A number of its own for each column, so that two that are mixed up show.
  const own = column.pk ? row : row * 100_000 + mark(table, column.name)
  switch (column.type) {
    case 'INTEGER':
      return own
    case 'REAL':
      return own + 0.5
    case 'BOOLEAN':
      return row % 2
    case 'BLOB':
      return Buffer.from(`${table}.${column.name} ${row}`)
    case 'JSONB':
      return JSON.stringify([`${table}.${column.name} ${row}`])
    default:
      return `${table}.${column.name} ${row}`
  }
}

/** Puts two rows into every table that has none: one with every column filled in, one with only what must be. */
export function fillEmptyTables(file: string): void {
  open(file, database => {
    database.pragma('foreign_keys = off')
    for (const table of tablesOf(database)) {
      if (database.prepare(`select count(*) from "${table}"`).pluck().get() !== 0) continue
      const columns = database.pragma(`table_info("${table}")`) as Column[]
      for (const row of [1, 2]) {
        const given = columns.filter(
          ({ notnull, dflt_value, pk }) => row === 1 || pk > 0 || (notnull && dflt_value === null),
        )
        const names = given.map(({ name }) => `"${name}"`).join(', ')
        const marks = given.map(() => '?').join(', ')
        const values = given.map(column => valueIn(database, table, column, row))
        database.prepare(`insert into "${table}" (${names}) values (${marks})`).run(values)
      }
    }
  })
}

/** Every row of every table, in the order of their keys. */
export function readAll(file: string): Rows {
  return open(file, database =>
    Object.fromEntries(
      tablesOf(database).map(table => {
        const columns = database.pragma(`table_info("${table}")`) as Column[]
        const keys = columns.filter(({ pk }) => pk > 0).map(({ name }) => `"${name}"`)
        return [
          table,
          database.prepare(`select * from "${table}" order by ${keys.join(', ')}`).all() as Row[],
        ]
      }),
    ),
  )
}

/** What guards the tables, by name, and what is wrong with the links and the pages of the file. */
export function lookOver(file: string): { guards: string[]; faults: unknown[] } {
  return open(file, database => ({
    guards: database
      .prepare("select name from sqlite_master where type = 'trigger' order by name")
      .pluck()
      .all() as string[],
    faults: [
      ...(database.pragma('foreign_key_check') as unknown[]),
      ...(database.pragma('integrity_check') as { integrity_check: string }[]).filter(
        ({ integrity_check }) => integrity_check !== 'ok',
      ),
    ],
  }))
}
