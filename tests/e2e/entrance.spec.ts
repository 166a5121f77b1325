import type { Page } from '@playwright/test'
import { expect, expectAccessible, test } from './fixtures.ts'

/** What an app without a shop shows first. */
const firstScreen = (page: Page) => page.getByRole('heading', { name: 'Welcome to Lustrum' })

// The page was still asking when the plug was pulled.
test.use({ allowedErrors: [/Failed to fetch|not answering/] })

test('the printed address lets a browser in, and leaves no secret in its address bar', async ({
  page,
  shop,
}) => {
  await shop.enter(page)
  await expect(firstScreen(page)).toBeVisible()
  expect(page.url()).toBe(`${shop.address}/welcome`)
  const [cookie] = await page.context().cookies()
  expect(cookie).toMatchObject({ httpOnly: true, sameSite: 'Strict' })
  await expectAccessible(page)
})

test('without the secret, or with a wrong one, nobody gets in', async ({ page, shop }) => {
  for (const path of ['/', '/enter/', '/enter/no-such-secret', '/trpc/system.now']) {
    const answer = await page.goto(shop.address + path)
    expect(answer?.status(), path).toBe(401)
    await expect(page.getByText('This window has not been let in. Start Lustrum again')).toBeVisible()
  }
  await expect(firstScreen(page)).toBeHidden()
})

test('a way in is used up by the first browser that takes it', async ({ page, shop, browser }) => {
  await shop.enter(page)
  const other = await (await browser.newContext()).newPage()
  expect((await other.goto(shop.entrance))?.status()).toBe(401)
  await shop.enter(other)
  await expect(firstScreen(other)).toBeVisible()
  await other.context().close()
})

test('after the plug is pulled the next start takes over, and the old way in is shut', async ({
  page,
  shop,
}) => {
  await shop.enter(page)
  // A screen still on its way when the plug is pulled is another fault than the one looked for.
  await expect(firstScreen(page)).toBeVisible()
  const before = shop.entrance
  await shop.kill()
  await shop.restart()
  expect(shop.entrance).not.toBe(before)
  const old = await page.goto(shop.address + new URL(before).pathname)
  expect(old?.status()).toBe(401)
  await shop.enter(page)
  await expect(firstScreen(page)).toBeVisible()
})
