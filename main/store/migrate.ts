import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { Refusal } from '../domain/refusal.ts'
import { withSchemaEngine } from './schemaEngine.ts'

export interface MigrationFiles {
  /** The folder that holds one folder a migration. */
  dir: string
  /** Where the engine's WebAssembly lies, if not in node_modules. */
  wasmPath?: string
}

const noFilter = { externalTables: [], externalEnums: [] }

function listMigrations(dir: string) {
  const names = readdirSync(dir, { withFileTypes: true })
    .filter(entry => entry.isDirectory())
    .map(entry => entry.name)
    .sort()
  return {
    baseDir: dir,
    lockfile: { path: 'migration_lock.toml', content: 'provider = "sqlite"\n' },
    shadowDbInitScript: '',
    migrationDirectories: names.map(name => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: { tag: 'ok' as const, value: readFileSync(join(dir, name, 'migration.sql'), 'utf8') },
      },
    })),
  }
}

/**
 * Brings the database file up to this version's schema, with a copy of it beside it first if it held anything.
 * Returns the migrations applied. Refuses a database written by a newer version, or one whose migration broke.
 */
export async function migrate(file: string, files: MigrationFiles): Promise<string[]> {
  const migrationsList = listMigrations(files.dir)
  const names = migrationsList.migrationDirectories.map(entry => entry.path)
  const rows = recordedMigrations(file)
  const broken = rows.find(row => row.finished === null)
  if (broken)
    throw new Refusal(
      'database-broken',
      'database',
      file,
      `The database's change "${broken.name}" did not finish: restore the copy made before it.`,
    )
  if (rows.some(row => !names.includes(row.name)))
    throw new Refusal(
      'database-newer',
      'database',
      file,
      'This database was written by a newer version of Lustrum: install that version, or open another data folder.',
    )
  const missing = names.filter(name => !rows.some(row => row.name === name))
  if (missing.length === 0) return []
  if (rows.length > 0) copyBefore(file, missing[0]!)
  return withSchemaEngine(
    file,
    async engine =>
      (await engine.applyMigrations({ migrationsList, filters: noFilter })).appliedMigrationNames,
    undefined,
    files.wasmPath,
  )
}

/** What the database says was done to it; nothing for a file that is not there yet. */
function recordedMigrations(file: string): { name: string; finished: number | null }[] {
  if (!existsSync(file)) return []
  const database = new Database(file)
  try {
    const known = database.prepare("select 1 from sqlite_master where name = '_prisma_migrations'").get()
    if (!known) return []
    return database
      .prepare(
        'select migration_name as name, finished_at as finished from _prisma_migrations where rolled_back_at is null',
      )
      .all() as { name: string; finished: number | null }[]
  } finally {
    database.close()
  }
}

/** A whole copy of the database as it was before a migration, in a folder beside it. */
function copyBefore(file: string, migration: string): void {
  const folder = join(dirname(file), 'before-migration')
  mkdirSync(folder, { recursive: true })
  const copy = join(folder, `${basename(file, '.db')}-before-${migration}.db`)
  rmSync(copy, { force: true })
  const database = new Database(file)
  try {
    database.prepare('vacuum into ?').run(copy)
  } finally {
    database.close()
  }
}
