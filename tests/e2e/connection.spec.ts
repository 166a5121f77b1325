import type { Page } from '@playwright/test'
import { expect, expectAccessible, test } from './fixtures.ts'

test.use({
  shopDemo: true,
  shopNow: '2026-04-15T11:30:00Z',
  allowedErrors: [/Failed to fetch|ERR_|not answering|does not know/],
})

const away = (page: Page) => page.getByRole('status').filter({ hasText: 'The app is not answering' })
const nameField = (page: Page) => page.getByRole('textbox', { name: 'Name' })

/** The shop's name as it is kept. */
const shopName = (page: Page) =>
  page.evaluate(async () => {
    const { token } = JSON.parse(localStorage.getItem('lustrum-door') ?? '{}')
    const answer = await fetch('/trpc/shop.get', { headers: { 'x-lustrum-door': token } })
    return (await answer.json()).result.data.name as string
  })

/** Renames the shop from outside every page, as another window would. */
async function rename(page: Page, name: string): Promise<void> {
  await page.evaluate(async name => {
    const { token } = JSON.parse(localStorage.getItem('lustrum-door') ?? '{}')
    const headers = { 'content-type': 'application/json', 'x-lustrum-door': token }
    const { result } = await (await fetch('/trpc/shop.get', { headers })).json()
    const { demo: _, ...shop } = result.data
    await fetch('/trpc/shop.update', { method: 'POST', headers, body: JSON.stringify({ ...shop, name }) })
  }, name)
}

test('ten tabs, typed addresses and reloads all work, and each hears of changes when any of them closes', async ({
  desk,
  shop,
  context,
}) => {
  test.slow()
  const tabs = [desk]
  while (tabs.length < 10) tabs.push(await context.newPage())
  // One connection each would stop at the sixth.
  for (const tab of tabs) {
    await tab.goto(`${shop.address}/customers`)
    await tab.goto(`${shop.address}/settings/shop`)
    await expect(nameField(tab)).toBeVisible()
  }
  for (const tab of tabs.slice(0, 3)) await tab.reload()
  await expect(nameField(desk)).toBeVisible()

  await rename(desk, 'Harrow Lane')
  for (const tab of tabs) await expect(nameField(tab)).toHaveValue('Harrow Lane')

  // Whichever listens for all, it is among these.
  for (const tab of tabs.splice(0, 9)) await tab.close()
  const [last] = tabs
  if (!last) throw new Error('No tab is left.')
  await expect(async () => {
    await rename(last, 'Millbrook')
    await expect(nameField(last)).toHaveValue('Millbrook', { timeout: 2_000 })
  }).toPass()
})

test('in one tab a dozen typed addresses do not hang', async ({ desk, shop }) => {
  for (let round = 0; round < 4; round++)
    for (const path of ['/', '/customers', '/settings/shop']) await desk.goto(shop.address + path)
  // A screen that comes writes its address once more, which would be taken for the page gone back to.
  await expect(nameField(desk)).toBeVisible()
  await desk.goBack()
  await expect(desk.getByRole('heading', { level: 1, name: 'Customers' })).toBeVisible()
  await desk.goBack()
  await expect(desk.getByRole('heading', { level: 1, name: 'Board' })).toBeVisible()
  await desk.goForward()
  await expect(desk.getByRole('heading', { level: 1 })).toBeVisible()
})

test('an app that is gone is told in words, keeps what was typed, and comes back by itself', async ({
  desk,
  shop,
  context,
}) => {
  await desk.goto(`${shop.address}/settings/shop`)
  await nameField(desk).fill('Typed while it was there')
  const idle = await context.newPage()
  // A screen whose code is still on its way is the next test's; one is fetched after the other, Settings after Morning.
  const fetched = idle.waitForResponse(/assets\/Settings-[^/]*\.js$/)
  await idle.goto(`${shop.address}/customers`)
  await expect(idle.getByRole('heading', { level: 1 })).toBeVisible()
  await fetched
  await shop.kill()

  // Also on a page where nobody does anything.
  for (const page of [desk, idle]) await expect(away(page)).toBeVisible()
  await desk.getByRole('button', { name: 'Save' }).first().click()
  await expect(desk.getByText('What you typed is kept; nothing was saved.').first()).toBeVisible()
  await expect(nameField(desk)).toHaveValue('Typed while it was there')
  await expectAccessible(idle)

  // A list that could not be read does not look empty, and a sheet is not laid out for ever.
  await idle.getByRole('link', { name: 'Morning', exact: true }).click()
  await expect(idle.getByText('This screen could not be read yet')).toBeVisible()
  await expect(idle.getByText('Laying out the day')).toBeHidden()

  await shop.restart()
  for (const page of [desk, idle]) await expect(away(page)).toBeHidden()
  await expect(idle.getByText('This screen could not be read yet')).toBeHidden()
  await expect(idle.getByRole('heading', { level: 1 })).toBeVisible()
  await expect(nameField(desk)).toHaveValue('Typed while it was there')
  await desk.getByRole('button', { name: 'Save' }).first().click()
  await expect(desk.getByText('nothing was saved')).toHaveCount(0)
  await expect.poll(() => shopName(desk)).toBe('Typed while it was there')
  await desk.reload()
  await expect(nameField(desk)).toHaveValue('Typed while it was there')
})

test('a screen gone to while the app is gone comes once it is back, though nothing of it had been fetched', async ({
  page,
  shop,
  context,
}) => {
  await context.route(/assets\/Morning-/, route => route.abort())
  await shop.enter(page)
  await expect(page.getByRole('heading', { name: 'Board' })).toBeVisible()
  await shop.kill()
  await page.getByRole('link', { name: 'Morning', exact: true }).click()
  await expect(away(page)).toBeVisible()
  await expect(page.getByRole('navigation', { name: 'Screens' })).toBeVisible()
  await context.unroute(/assets\/Morning-/)
  await shop.restart()
  await expect(page.getByRole('heading', { name: /^Morning sheet/ })).toBeVisible()
})

test('a browser that is not known is told what to do, and goes on once another tab was let in', async ({
  desk,
  shop,
  context,
}) => {
  await desk.evaluate(() => localStorage.removeItem('lustrum-door'))
  await desk.reload()
  await expect(desk.getByRole('heading', { name: 'This browser has not been let in' })).toBeVisible()
  await expectAccessible(desk)
  await shop.enter(await context.newPage())
  await expect(desk.getByRole('navigation', { name: 'Screens' })).toBeVisible()
})
