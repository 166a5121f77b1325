import { expect, test } from './fixtures.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

test('a caller’s three questions are answered two acts after naming the car', async ({ page, shop }) => {
  await shop.enter(page, '/book')
  const find = page.getByLabel('Find by name, phone or plate')
  await find.fill('VCT 647')
  await expect(page.getByRole('list', { name: 'Found customers' })).toContainText('Abel Thistle')
  const from = Date.now()
  await find.press('Enter')
  await page.getByRole('checkbox', { name: 'Two layers' }).press(' ')
  const offer = page.getByRole('group', { name: 'Offers' })
  await expect(offer.getByRole('radio', { name: /: home / }).first()).toBeChecked()
  test.info().annotations.push({ type: 'ms', description: String(Date.now() - from) })
  await expect(offer).toContainText(/Drop off by .*\d\d:\d\d/)
  const price = page.getByText(/before tax/)
  await expect(page.getByText('$1,805.00')).toBeVisible()
  for (const answer of [offer, price]) await expect(answer.first()).toBeInViewport()
})
