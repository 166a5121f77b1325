import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { inject, onTestFinished, TestRunner } from 'vitest'
import { minuteOf } from '../../main/domain/calendar/index.ts'
import { migrationsDir } from '../../main/hosts/build.ts'
import { endBeside } from '../../main/services/desk/beside.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { openStore } from '../../main/store/store.ts'

export interface TestDesk extends Desk {
  /** Sets the clock, as in `2026-04-15T07:40:00Z`. */
  setNow(iso: string): void
  close(): Promise<void>
}

/** Has what a test, or what runs before it, opened closed after it; a test may do so earlier by itself. */
export function closedOnce(close: () => Promise<void>): () => Promise<void> {
  let closing: Promise<void> | null = null
  const once = () => {
    closing ??= close()
    return closing
  }
  if (TestRunner.getCurrentTest()) onTestFinished(once)
  return once
}

/**
 * A desk on a real database file in a temporary folder, with a clock that stands still. It is closed after the test;
 * one that is opened for all tests of a file is to be closed after them.
 */
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
    close: closedOnce(async () => {
      await endBeside(store)
      await store.close()
      rmSync(dir, { recursive: true, force: true })
    }),
  }
}
