import { createHash } from 'node:crypto'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { migrate } from '../main/store/migrate.ts'
import { withSchemaEngine } from '../main/store/schemaEngine.ts'

const here = fileURLToPath(new URL('.', import.meta.url))

/** The schema files as the engine takes them; `url` points the datasource at a database file. */
export function schemaFiles(): { path: string; content: string }[] {
  const dir = join(here, 'schema')
  return readdirSync(dir)
    .sort()
    .map(name => ({ path: join(dir, name), content: readFileSync(join(dir, name), 'utf8') }))
}

/**
 * The SQL that takes a database with all existing migrations to the present schema; empty where nothing changed.
 * The engine's own way wants a shadow database, which SQLite has none of: a scratch file does that here.
 */
export async function pendingSql(): Promise<string> {
  const scratch = mkdtempSync(join(tmpdir(), 'lustrum-migration-'))
  try {
    const file = join(scratch, 'scratch.db')
    mkdirSync(join(here, 'migrations'), { recursive: true })
    await migrate(file, { dir: join(here, 'migrations') })
    const files = schemaFiles()
    const diff = await withSchemaEngine(
      file,
      engine =>
        engine.diff({
          from: { tag: 'schemaDatasource', files, configDir: here },
          to: { tag: 'schemaDatamodel', files },
          script: true,
          exitCode: null,
          filters: { externalTables: [], externalEnums: [] },
        }),
      files.map(({ path, content }) => [path, content]),
    )
    const sql = diff.stdout ?? ''
    return sql.includes('empty migration') ? '' : sql
  } finally {
    rmSync(scratch, { recursive: true, force: true })
  }
}

/** The hash by which a migration is known, the same on a checkout that turns line ends. */
export function hashOf(sql: string): string {
  return createHash('sha256').update(sql.replaceAll('\r\n', '\n')).digest('hex')
}

/** Keeps the hash of every migration that has none yet; a test then refuses an edit of it. */
function sealMigrations(): void {
  const list = join(here, 'sealedMigrations.json')
  const sealed = JSON.parse(readFileSync(list, 'utf8')) as Record<string, string>
  for (const name of readdirSync(join(here, 'migrations')).sort())
    sealed[name] ??= hashOf(readFileSync(join(here, 'migrations', name, 'migration.sql'), 'utf8'))
  writeFileSync(list, `${JSON.stringify(sealed, null, 2)}\n`)
}

if (import.meta.main) {
  const name = process.argv[2]
  if (!name || !/^[a-z0-9_]+$/.test(name)) {
    console.error('Say what changes, in snake case: npm run db:migration -- add_lots')
    process.exit(2)
  }
  const sql = await pendingSql()
  if (!sql) {
    sealMigrations()
    console.log('The migrations already lead to the present schema.')
  } else {
    const stamp = new Date().toISOString().replace(/\D/g, '').slice(0, 14)
    const dir = join(here, 'migrations', `${stamp}_${name}`)
    mkdirSync(dir, { recursive: true })
    writeFileSync(join(dir, 'migration.sql'), sql)
    sealMigrations()
    console.log(`prisma/migrations/${stamp}_${name}/migration.sql`)
  }
}
