import type Database from 'better-sqlite3'

export type Value = string | number | bigint | null
export type Row = Record<string, Value>

/** Puts rows of one table straight in, as fast as SQLite takes them; its keys and triggers hold all the same. */
export function rowInserter(db: Database.Database): (table: string, rows: readonly Row[]) => void {
  const known = new Map<string, Database.Statement>()
  return (table, rows) => {
    const [first] = rows
    if (!first) return
    const columns = Object.keys(first)
    const key = `${table} ${columns.join(' ')}`
    let statement = known.get(key)
    if (!statement) {
      const names = columns.map(column => `"${column}"`).join(',')
      statement = db.prepare(`insert into "${table}" (${names}) values (${columns.map(() => '?').join(',')})`)
      known.set(key, statement)
    }
    for (const row of rows) statement.run(...columns.map(column => bound(row[column])))
  }
}

/** As SQLite keeps it: a row read through the store's client and put in again has ticks and lists in it. */
function bound(value: unknown): Value {
  if (typeof value === 'boolean') return Number(value)
  if (typeof value === 'object' && value !== null) return JSON.stringify(value)
  return (value ?? null) as Value
}
