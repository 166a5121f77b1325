import { expect, test } from './fixtures.ts'
import { Frame } from './pages/Frame.ts'
import { Welcome } from './pages/Welcome.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z' })

test('one button opens the demo shop', async ({ desk }) => {
  await new Welcome(desk).openDemo.click()
  const frame = new Frame(desk)
  await expect(frame.bar).toBeVisible()
  await frame.goTo('Customers')
  await expect(desk.getByText('40 customers')).toBeVisible()

  // What orders of each size cost a day, parts of a cent and all: closing the day, and on the product's own page.
  await frame.goTo('Close of day')
  const costs = desk.getByText('cost a day by size of order')
  await desk.getByRole('button', { name: 'Numbers of Ovrel Two' }).click()
  await expect(costs).toBeVisible()
  await desk.getByRole('link', { name: 'Ovrel Two', exact: true }).first().click()
  const outlook = desk.getByRole('region', { name: 'Outlook' })
  // One sentence to act on; the textbook's words are behind it.
  await expect(outlook.getByText(/^Order \d+ packs/)).toBeVisible()
  await expect(outlook.getByText('Order point', { exact: true })).not.toBeVisible()
  await outlook.getByText('Why', { exact: true }).click()
  await expect(outlook.getByText('Order point', { exact: true })).toBeVisible()
  await expect(costs).toBeVisible()
})
