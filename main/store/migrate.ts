import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { say } from '../domain/language/index.ts'
import { Refusal } from '../domain/refusal.ts'
import { oneLine } from './oneLine.ts'
import { withSchemaEngine } from './schemaEngine.ts'
import { flush, moveWhole } from './wholeFile.ts'

export interface MigrationFiles {
  /** The folder that holds one folder a migration. */
  dir: string
  /** Where the engine's WebAssembly lies, if not in node_modules. */
  wasmPath?: string
}

/** Where copies made before a migration are kept. */
export function copiesFolder(dataDir: string): string {
  return join(dataDir, 'before-migration')
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
 * Brings the database file up to this version's schema and returns the migrations applied. They are applied to a copy
 * that then takes the file's place in one step, so that a crash or a failed migration leaves the file as it was; and
 * another copy of what it was is kept beside it. Nobody else may have the file open. Refuses a database written by a
 * newer version, or by another program.
 */
export async function migrate(file: string, files: MigrationFiles): Promise<string[]> {
  const migrationsList = listMigrations(files.dir)
  const names = migrationsList.migrationDirectories.map(entry => entry.path)
  const recorded = recordedMigrations(file)
  if (recorded.some(name => !names.includes(name)))
    throw new Refusal(
      'database-newer',
      'database',
      file,
      say(
        'The database {file} was written by a newer version of Lustrum: install that version, or open another data folder with --data.',
        { file },
      ),
    )
  const [missing] = names.filter(name => !recorded.includes(name))
  if (missing === undefined) return []
  const work = `${file}.updating`
  removeDatabase(work)
  if (recorded.length > 0) copyFileSync(copyBefore(file, missing), work)
  const applied = await withSchemaEngine(
    work,
    async engine =>
      (await engine.applyMigrations({ migrationsList, filters: noFilter })).appliedMigrationNames,
    undefined,
    files.wasmPath,
  ).catch(error => {
    removeDatabase(work)
    throw new Refusal(
      'migration-failed',
      'database',
      file,
      say(
        'The database {file} could not be brought up to this version ({fault}). It was left as it was: the version of Lustrum that wrote it still opens it.',
        { file, fault: oneLine((error as Error).message) },
      ),
    )
  })
  flush(work)
  moveWhole(work, file)
  return applied
}

/** The names of the migrations the database has had; none for a file that is not there yet. */
function recordedMigrations(file: string): string[] {
  if (!existsSync(file)) return []
  const database = new Database(file)
  try {
    const tables = database.prepare("select name from sqlite_master where type = 'table'").pluck().all()
    if (tables.length === 0) return []
    if (!tables.includes('_prisma_migrations'))
      throw new Refusal(
        'database-foreign',
        'database',
        file,
        say(
          '{file} is a database of another program: move it away, or open another data folder with --data.',
          { file },
        ),
      )
    return database
      .prepare('select migration_name from _prisma_migrations where rolled_back_at is null')
      .pluck()
      .all() as string[]
  } finally {
    database.close()
  }
}

/** Writes a whole copy of the database as it was before a migration into a folder beside it; returns its path. */
function copyBefore(file: string, migration: string): string {
  const folder = copiesFolder(dirname(file))
  mkdirSync(folder, { recursive: true })
  const copy = join(folder, `${basename(file, '.db')}-before-${migration}.db`)
  removeDatabase(copy)
  const database = new Database(file)
  try {
    // Folds the write-ahead log into the file: one left beside it would be taken for the new file's.
    database.pragma('journal_mode = delete')
    database.prepare('vacuum into ?').run(copy)
  } catch (error) {
    // Half a copy, for want of room, is none.
    removeDatabase(copy)
    throw error
  } finally {
    database.close()
  }
  flush(copy)
  return copy
}

/** Removes a database file with what SQLite keeps beside it. */
function removeDatabase(file: string): void {
  for (const end of ['', '-wal', '-shm', '-journal']) rmSync(file + end, { force: true })
}
