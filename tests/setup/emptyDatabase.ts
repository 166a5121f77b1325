import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TestProject } from 'vitest/node'
import { migrationsDir } from '../../main/hosts/build.ts'
import { migrate } from '../../main/store/migrate.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** A migrated, empty database, for every test of the run to copy: migrating takes longer than most tests. */
    emptyDatabase: string
  }
}

export default async function setUp(project: TestProject): Promise<() => void> {
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-empty-'))
  const file = join(dir, 'lustrum.db')
  await migrate(file, { dir: migrationsDir })
  project.provide('emptyDatabase', file)
  return () => rmSync(dir, { recursive: true, force: true })
}
