import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { onTestFinished } from 'vitest'
import { migrationsDir } from '../../main/hosts/build.ts'
import { openStore } from '../../main/store/store.ts'
import { fillYears, smallShop, yearsNowAt } from '../bench/years/fillYears.ts'

/** A generated shop of some years, small, until the test ends; `change` has its file before it is opened. */
export async function yearsShop(change?: (database: Database.Database) => void, years = 1) {
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-years-'))
  onTestFinished(() => rmSync(dir, { recursive: true, force: true }))
  const file = join(dir, 'lustrum.db')
  const files = { dir: migrationsDir }
  await fillYears(file, files, { ...smallShop, years })
  if (change) {
    const database = new Database(file)
    change(database)
    database.close()
  }
  const store = await openStore(file, files)
  onTestFinished(() => store.close())
  return { dir, desk: { store, now: () => yearsNowAt, who: 'test' } }
}
