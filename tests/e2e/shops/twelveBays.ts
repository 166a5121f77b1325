import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { openStore } from '../../../main/store/store.ts'
import { bookStays } from '../../bench/board/bookedStays.ts'
import { pageApi } from '../pageApi.ts'
import type { ShopServer } from '../server.ts'

/** When its clock must stand: Wednesday 15 April 2026, 10:00. */
export const twelveBaysNow = '2026-04-15T10:00:00Z'

/**
 * Twelve bays and twelve people on an empty folder, with as many stays, written while the app is closed: two a week in
 * each bay, or as `visitDays` says.
 */
export async function fillTwelveBays(
  page: Page,
  shop: ShopServer,
  stays: number,
  visitDays?: number[],
): Promise<void> {
  await shop.enter(page)
  await pageApi(page).shop.setUp.mutate({
    name: 'Ashdown Paint Care',
    zone: 'UTC',
    currency: 'EUR',
    units: 'metric',
    country: 'IE',
    weekly: [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: 480, to: 1_080 })),
    bays: Array.from({ length: 12 }, (_, i) => ({
      name: `Bay ${i + 1}`,
      capabilities: ['wet', 'polish', 'clean', 'cure'],
    })),
    crew: Array.from({ length: 12 }, (_, i) => ({
      name: `Person ${i + 1}`,
      skills: ['wash', 'polish', 'coat'],
    })),
    starters: false,
  })
  // The first screen may still be loading: it would say that the app has gone.
  await page.goto('about:blank')
  await shop.stop()
  const store = await openStore(join(shop.dataDir, 'lustrum.db'), { dir: migrationsDir })
  const nowAt = Temporal.Instant.from(twelveBaysNow).epochMilliseconds / 60_000
  await bookStays({ store, now: () => nowAt, who: 'test' }, stays, visitDays)
  await store.close()
  await shop.start()
}
