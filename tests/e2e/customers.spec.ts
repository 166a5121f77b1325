import { expect, expectAccessible, test } from './fixtures.ts'
import { typePair } from './keyboard.ts'
import { Palette } from './pages/Palette.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

test('a customer is taken down with a car, and found by its plate with Ctrl K', async ({ desk, shop }) => {
  await shop.enter(desk, '/customers')
  await expect(desk.getByText('40 customers')).toBeVisible()
  await expectAccessible(desk)
  await desk.getByRole('button', { name: 'Add a customer' }).click()
  const form = desk.getByRole('form', { name: 'A new customer' })
  const phone = form.getByRole('textbox', { name: 'Phone' })
  await form.getByRole('textbox', { name: 'Name' }).fill('Zoë Ångström')
  await phone.fill('call me')
  await desk.keyboard.press('Enter')
  await expect(phone).toBeFocused()
  await expect(phone).toHaveAccessibleDescription(/no phone number/)
  await phone.fill('212 555 0199')
  await desk.keyboard.press('Enter')
  await expect(desk.getByRole('heading', { level: 1, name: 'Zoë Ångström' })).toBeVisible()

  await desk.getByRole('button', { name: 'Add a car' }).click()
  const car = desk.getByRole('form', { name: 'A new car' })
  await car.getByRole('textbox', { name: 'Plate' }).fill('oi 417')
  await car.getByRole('textbox', { name: 'Make' }).fill('Quillan')
  await expectAccessible(desk)
  await desk.keyboard.press('Enter')
  await expect(desk.getByText('OI 417')).toBeVisible()
  await expectAccessible(desk)

  await shop.enter(desk, '/')
  const palette = new Palette(desk)
  await palette.open()
  await palette.search.fill('0I417')
  await expect(palette.result('Zoë Ångström')).toBeVisible()
  await expectAccessible(desk)
  await desk.keyboard.press('Enter')
  await expect(desk.getByRole('heading', { level: 1, name: 'Zoë Ångström' })).toBeVisible()
})

test('keys go to the screens, and ? lists them', async ({ desk }) => {
  for (const [key, path, heading] of [
    ['c', '/customers', 'Customers'],
    ['k', '/book', 'Book a car'],
    ['m', '/morning', 'Morning sheet'],
    ['s', '/settings/shop', 'Shop'],
    ['b', '/', 'Board'],
  ] as const) {
    await desk.getByRole('main').focus()
    await typePair(desk, 'g', key)
    await expect(desk).toHaveURL(new RegExp(`${path}$`))
    // A screen that comes late takes the focus into its first field, and the next keys with it.
    await expect(desk.getByRole('main').getByRole('heading', { name: heading }).first()).toBeVisible()
  }
  await desk.keyboard.press('?')
  const keys = desk.getByRole('dialog', { name: 'Help' })
  const everywhere = keys.getByRole('region', { name: 'Everywhere' })
  await expect(everywhere).toContainText('Go to Customers')
  await expect(everywhere).toContainText('Alt ↓In a date: open its calendar')
  await expect(keys.getByRole('region', { name: 'What people ask here' })).toContainText(
    'How do I move a car?',
  )
  await expect(keys.getByRole('region', { name: 'Board' })).toContainText('pick up to move')
  await expectAccessible(desk)
})

test('a job is found by its number, and a command by its words', async ({ desk }) => {
  const palette = new Palette(desk)
  await palette.open()
  await palette.search.fill('12')
  await expect(palette.result(/^Job 12, /)).toBeVisible()
  await desk.keyboard.press('Enter')
  await expect(desk).toHaveURL(/\/jobs\//)
  await palette.open()
  await palette.search.fill('dark')
  await palette.result('Dark colours').click()
  await expect(desk.locator('html')).toHaveAttribute('data-mantine-color-scheme', 'dark')
})

test('a customer’s page lists their visits', async ({ desk, shop }) => {
  const palette = new Palette(desk)
  await palette.open()
  await palette.search.fill('job 12')
  // "Job 12, <plate of two parts> <name>"
  const name = (await palette.result(/^Job 12, /).textContent())!.replace(
    /^Job 12, \S+ \S+ (\p{L}+ \p{L}+?)(booked|held|in the|handed).*$/u,
    '$1',
  )
  await desk.keyboard.press('Escape')
  await shop.enter(desk, '/customers')
  const find = desk.getByRole('textbox', { name: 'Find a customer' })
  await find.fill(name)
  await expect(desk.getByText('1 customer found')).toBeVisible()
  await find.press('Enter')
  const visits = desk.getByRole('region', { name: 'Visits' })
  await visits.getByRole('link', { name: '12', exact: true }).click()
  await expect(desk).toHaveURL(/\/jobs\//)
})

test('a visit is booked from the customer’s page and from the upkeep list, with the car and its day chosen', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/customers/demo-customer-40')
  await desk.getByRole('button', { name: 'Book a visit' }).click()
  const asked = desk.getByRole('group', { name: 'Who and what' })
  await expect(asked).toContainText('Abel Thistle VCT 647')
  await desk.getByRole('link', { name: 'Upkeep' }).click()
  await desk.getByRole('button', { name: 'Book VCT 647, topper renewal' }).click()
  await expect(asked).toContainText('Abel Thistle VCT 647')
  // It is due on Monday 20 April.
  await expect(asked.getByRole('radio', { name: 'A day' })).toBeChecked()
})
