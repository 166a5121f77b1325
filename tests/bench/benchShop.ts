/** An empty shop on a database of its own, for what is measured in it. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { migrationsDir } from '../../main/hosts/build.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { setUpShop } from '../../main/services/setUp/shopSetUp.ts'
import { openStore } from '../../main/store/store.ts'

/** Wednesday 15 April 2026, 10:00 UTC. */
export const nowAt = Date.UTC(2026, 3, 15, 10) / 60_000

/** Bays that take every step and people who can do all of them, Monday to Friday from 08:00 to 18:00. */
export async function benchShop({
  bays,
  people,
  starters,
}: {
  bays: number
  people: number
  starters: boolean
}) {
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-bench-'))
  const store = await openStore(join(dir, 'shop.db'), { dir: migrationsDir })
  const desk: Desk = { store, now: () => nowAt, who: 'bench' }
  await setUpShop(desk, {
    name: 'Ashdown Paint Care',
    zone: 'UTC',
    currency: 'EUR',
    units: 'metric',
    country: 'US',
    weekly: [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: 480, to: 1080 })),
    bays: Array.from({ length: bays }, (_, i) => ({
      name: `Bay ${i + 1}`,
      capabilities: ['wet', 'polish', 'clean', 'cure'],
    })),
    crew: Array.from({ length: people }, (_, i) => ({
      name: `Person ${i + 1}`,
      skills: ['wash', 'polish', 'coat'],
    })),
    starters,
  })
  return {
    store,
    desk,
    async close() {
      await store.close()
      rmSync(dir, { recursive: true })
    },
  }
}
