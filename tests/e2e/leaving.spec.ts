import type { Locator, Page } from '@playwright/test'
import { unzip } from '../services/leaving/unzip.ts'
import { inColours } from './accessible.ts'
import { expect, expectAccessible, test } from './fixtures.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

/** What a link to a document leads to. */
async function opened(desk: Page, link: Locator): Promise<Buffer> {
  const answer = await desk.request.get(new URL((await link.getAttribute('href'))!, desk.url()).href)
  expect(answer.status()).toBe(200)
  return answer.body()
}

/** Fits both windows, in both looks; keeps pictures where somebody wants to see them. */
async function look(desk: Page, name: string): Promise<void> {
  await expectAccessible(desk)
  const dir = process.env.LUSTRUM_LOOKS
  for (const [width, height] of [
    [820, 1180],
    [1366, 768],
  ] as const) {
    await desk.setViewportSize({ width, height })
    const over = await desk.getByRole('main').evaluate(main => main.scrollWidth - main.clientWidth)
    expect(over, `${name} is wider than a window of ${width}`).toBeLessThanOrEqual(0)
    if (!dir) continue
    for (const colorScheme of ['dark', 'light'] as const) {
      await inColours(desk, colorScheme)
      await desk.screenshot({ path: `${dir}/${name}-${width}-${colorScheme}.png` })
    }
  }
}

test('a shop takes its data along', async ({ desk, shop }) => {
  await shop.enter(desk, '/settings/data')
  await desk.getByRole('button', { name: 'Pack everything into one file' }).click()
  const save = desk.getByRole('link', { name: 'Save the file' })
  await expect(save).toBeVisible({ timeout: 30_000 })
  await look(desk, 'data')
  const files = unzip(await opened(desk, save))
  const shopRows = JSON.parse(files.get('shop.json')!.toString())
  expect(shopRows.tables.customers).toHaveLength(40)
  expect(files.has('tables/stock-moves.csv')).toBe(true)
  await desk.getByRole('button', { name: 'Delete the file here' }).click()
  await expect(save).toBeHidden()
})

test('one person is given their data, then erased everywhere, and the history says who did it', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/customers/new')
  const form = desk.getByRole('form', { name: 'A new customer' })
  await form.getByRole('textbox', { name: 'Name' }).fill('Edda Marsh')
  await form.getByRole('textbox', { name: 'Phone' }).fill('212 555 0199')
  await desk.keyboard.press('Enter')
  const heading = desk.getByRole('heading', { level: 1 })
  await expect(heading).toHaveText('Edda Marsh')
  const files = unzip(await opened(desk, desk.getByRole('link', { name: 'Save their file' })))
  expect(files.get('tables/customers.csv')!.toString()).toContain('Edda Marsh')
  const card = desk.locator('details').filter({ hasText: 'History' })
  await card.locator('summary').click()
  await expect(card.getByRole('listitem').first()).toContainText('added: name Edda Marsh')
  await look(desk, 'customer')

  await desk.getByRole('button', { name: 'Erase this person' }).click()
  const question = desk.getByRole('dialog', { name: 'This erases a person' })
  await expect(question).toContainText('Backups made until now still hold this person')
  await question.getByRole('button', { name: 'Do it anyway' }).click()
  await expect(heading).toHaveText('erased person')
  await expect(card.getByRole('listitem').first()).toContainText('erased: name and addresses taken out')
  await expect(card).not.toContainText('Edda')

  await shop.enter(desk, '/settings/history')
  const history = desk.getByRole('list', { name: 'History' })
  await expect(history.getByRole('listitem').first()).toContainText('customer erased person')
  await desk.getByRole('combobox', { name: 'What' }).click()
  await desk.getByRole('option', { name: 'erased', exact: true }).click()
  await expect(history.getByRole('listitem')).toHaveCount(1)
  const list = await opened(desk, desk.getByRole('link', { name: 'As a list (CSV)' }))
  expect(list.toString().trim().split('\r\n')).toHaveLength(2)
  await desk.getByRole('combobox', { name: 'What' }).clear()
  await desk.keyboard.press('Escape')
  await look(desk, 'history')
})
