import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { inject, onTestFinished } from 'vitest'
import { migrationsDir } from '../../main/hosts/build.ts'
import { openStore, type Store } from '../../main/store/store.ts'

/** A folder of the test's own, gone when it ends. */
export function makeFolder(): string {
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-store-'))
  onTestFinished(() => rmSync(dir, { recursive: true, force: true }))
  return dir
}

/** A store on a real file in that folder, closed when the test ends. */
export async function openTestStore(dir = makeFolder()): Promise<{ store: Store; file: string }> {
  const file = join(dir, 'lustrum.db')
  if (!existsSync(file)) copyFileSync(inject('emptyDatabase'), file)
  const store = await openStore(file, { dir: migrationsDir })
  onTestFinished(() => store.close())
  return { store, file }
}

/** The first line of the test's audit. */
export const stamp = { who: 'tester', at: 29_600_000 }
