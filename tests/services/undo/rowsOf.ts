import Database from 'better-sqlite3'
import { unwatched } from '../../../main/store/undo/watch.ts'

/**
 * Every row of every table but the audit, what is worked out anew, and what was looked at as a coat began, which stands
 * whatever is taken back; without its count of edits.
 */
export function rowsOf(file: string): Record<string, unknown[]> {
  const database = new Database(file, { readonly: true })
  try {
    const names = database
      .prepare("select name from sqlite_master where type = 'table' order by name")
      .pluck()
      .all() as string[]
    return Object.fromEntries(
      names
        .filter(name => !/^(sqlite_|_prisma)/.test(name) && !unwatched.has(name) && name !== 'ConditionCheck')
        .map(name => {
          const rows = database.prepare(`select * from "${name}"`).all() as Record<string, unknown>[]
          return [name, rows.map(({ version: _, ...row }) => JSON.stringify(row)).sort()]
        }),
    )
  } finally {
    database.close()
  }
}
