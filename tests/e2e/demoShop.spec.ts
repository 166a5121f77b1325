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
})
