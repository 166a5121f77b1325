import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { inject } from 'vitest'
import { minuteOf } from '../../main/domain/calendar/index.ts'
import { migrationsDir } from '../../main/hosts/build.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { openStore } from '../../main/store/store.ts'

export interface TestDesk extends Desk {
  /** Sets the clock, as in `2026-04-15T07:40:00Z`. */
  setNow(iso: string): void
  close(): Promise<void>
}

/** A desk on a real database file in a temporary folder, with a clock that stands still. Close it after the test. */
export async function makeDesk(now = '2026-04-15T07:40:00Z', who = 'front desk'): Promise<TestDesk> {
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-test-'))
  const file = join(dir, 'lustrum.db')
  copyFileSync(inject('emptyDatabase'), file)
  const store = await openStore(file, { dir: migrationsDir })
  let nowAt = minuteOf(Temporal.Instant.from(now))
  return {
    store,
    who,
    now: () => nowAt,
    setNow(iso) {
      nowAt = minuteOf(Temporal.Instant.from(iso))
    },
    async close() {
      await store.close()
      rmSync(dir, { recursive: true, force: true })
    },
  }
}
