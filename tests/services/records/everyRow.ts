import Database from 'better-sqlite3'
import type { TestDesk } from '../makeDesk.ts'

/** What only says what was done and how to take it back, or can be worked out anew. */
const beside = new Set(['AuditLine', 'Act', 'ActRow', 'PlanDue'])

/** Every row of every table but `except`, to compare what was with what is. */
export function everyRow(desk: TestDesk, except: readonly string[] = []): Record<string, unknown[]> {
  const database = new Database(desk.store.source.file, { readonly: true })
  try {
    const names = database
      .prepare("select name from sqlite_master where type = 'table' order by name")
      .pluck()
      .all() as string[]
    return Object.fromEntries(
      names
        .filter(name => !/^(sqlite_|_prisma)/.test(name) && !beside.has(name) && !except.includes(name))
        .map(name => [name, database.prepare(`select * from "${name}" order by rowid`).all()]),
    )
  } finally {
    database.close()
  }
}
