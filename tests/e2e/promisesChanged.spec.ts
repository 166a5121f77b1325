import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from './fixtures.ts'
import { Frame } from './pages/Frame.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

test('the owner of a shop begun with an earlier version is shown once what changed in its promises', async ({
  page,
  shop,
}) => {
  // As the migrations leave such a shop; that they do is tried where migrations are.
  await shop.stop()
  const database = new Database(join(shop.dataDir, 'lustrum.db'))
  database.exec('UPDATE "Shop" SET "promisesChanged" = true')
  database.close()
  await shop.start()
  await shop.enter(page)
  const told = page.getByRole('alert').filter({ hasText: 'What changed in your promises' })
  await expect(told.getByRole('listitem')).toHaveCount(10)
  for (const words of [
    'closes sooner in a warm bay',
    'for every panel',
    'within 45 minutes',
    'until it may get wet',
  ])
    await expect(told).toContainText(words)

  // It stays until somebody says it was read, over a look elsewhere and another window.
  const frame = new Frame(page)
  await frame.goTo('Customers')
  await frame.goTo('Board')
  await expect(told).toBeVisible()
  await told.getByRole('button', { name: 'Read, do not show again' }).click()
  await expect(told).toHaveCount(0)
  await page.reload()
  await expect(frame.bar).toBeVisible()
  await expect(page.getByRole('list').first()).toBeVisible()
  await expect(told).toHaveCount(0)
})
