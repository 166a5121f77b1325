import { cpSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { migrationsDir } from '../../../main/hosts/build.ts'

/** A migrations folder with only these, as an older version had it, and `more` of its own. */
export function migrationsOf(
  dir: string,
  names: string[],
  more: Record<string, string> = {},
): { dir: string } {
  const folder = join(dir, `migrations-${names.length}-${Object.keys(more).length}`)
  for (const name of names) cpSync(join(migrationsDir, name), join(folder, name), { recursive: true })
  for (const [name, sql] of Object.entries(more)) {
    mkdirSync(join(folder, name), { recursive: true })
    writeFileSync(join(folder, name, 'migration.sql'), sql)
  }
  return { dir: folder }
}
