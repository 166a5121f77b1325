import { expect, expectAccessible, test } from './fixtures.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

test('a list is chosen, looked through, taken in and taken out again, and says row by row what to mend', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/imports')
  await expectAccessible(desk)
  const list =
    'Name,Phone,Address\nOda Brandt,212 555 0131,"4 Quarry Lane\nAshdown"\nWim Alder,12,\n=Ann Lee,,\n'
  await desk.getByLabel('List', { exact: true }).setInputFiles({
    name: 'friends.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(list),
  })
  await expect(desk.getByRole('heading', { name: /friends\.csv/ })).toBeVisible()
  await desk.getByRole('button', { name: 'Look the rows through' }).click()
  await expect(desk.getByRole('cell', { name: /not a phone number/ })).toBeVisible()
  await expectAccessible(desk)
  await desk.getByRole('button', { name: 'Take in 2 rows' }).click()
  await expect(desk.getByRole('heading', { name: '2 rows taken in' })).toBeVisible()
  await shop.enter(desk, '/customers')
  await expect(desk.getByText('42 customers')).toBeVisible()
  await shop.enter(desk, '/imports')
  await desk.getByRole('button', { name: 'Take it out again friends.csv' }).click()
  await expect(desk.getByText(/taken out/)).toBeVisible()
  await shop.enter(desk, '/customers')
  await expect(desk.getByText('40 customers')).toBeVisible()
})

test('somebody on file is shown while they are typed again, and two entries are made one and taken apart', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/customers/new')
  await desk.getByRole('textbox', { name: 'Name' }).fill('Vale, Inés')
  const alike = desk.getByRole('status', { name: 'Likely on file already' })
  await expect(alike.getByText(/same name/)).toBeVisible()
  await desk.getByRole('textbox', { name: 'Phone' }).fill('212 555 0199')
  await desk.getByRole('button', { name: 'Save' }).click()
  await expect(desk.getByRole('heading', { level: 1, name: 'Vale, Inés' })).toBeVisible()
  await desk.getByRole('link', { name: 'Compare with Ines Vale' }).click()
  await expect(desk.getByRole('heading', { name: 'The same person twice' })).toBeVisible()
  await expectAccessible(desk)
  await desk.getByRole('link', { name: 'Keep the other entry instead' }).click()
  await desk.getByRole('radio', { name: 'Name: Vale, Inés' }).check()
  await desk.getByRole('button', { name: 'Merge' }).click()
  await expect(desk.getByRole('heading', { level: 1, name: 'Vale, Inés' })).toBeVisible()
  await expect(desk.getByText('Merged with')).toBeVisible()
  await expectAccessible(desk)
  await desk.getByRole('button', { name: /^Separate again/ }).click()
  await expect(desk.getByRole('heading', { level: 1, name: 'Ines Vale' })).toBeVisible()
})

test('several cars of one customer are held together, each a stay of its own, and booked by one answer', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/customers/demo-customer-01')
  const fleet = desk
    .locator('section, div')
    .filter({ has: desk.getByRole('heading', { name: 'Book several cars' }) })
    .last()
  await fleet.getByRole('checkbox', { name: 'KFS 204' }).check()
  await fleet.getByRole('checkbox', { name: 'DHH 784' }).check()
  await fleet.getByRole('combobox', { name: 'What is done to each' }).focus()
  await desk.keyboard.press('ArrowDown')
  await desk.getByRole('option', { name: 'Two-step correction' }).click()
  await desk.keyboard.press('Escape')
  await fleet.getByRole('button', { name: 'Hold a place for each' }).click()
  await expect(fleet.getByText(/^Held until/)).toBeVisible()
  await expect(fleet.getByRole('row')).toHaveCount(3)
  await expectAccessible(desk)
  await fleet.getByRole('button', { name: 'Book them all' }).click()
  await expect(fleet.getByRole('button', { name: 'Hold a place for each' })).toBeVisible()
  const visits = desk.getByRole('row').filter({ hasText: 'Two-step correction' })
  await expect(visits).toHaveCount(2)
})

test('a car goes to a new owner, who is found or written down', async ({ desk, shop }) => {
  await shop.enter(desk, '/cars/demo-vehicle-40')
  await desk.getByRole('button', { name: 'It has a new owner' }).click()
  const form = desk.getByRole('form', { name: 'It has a new owner' })
  await form.getByRole('textbox', { name: 'New owner' }).fill('toma birk')
  await form.getByRole('button', { name: 'Save the new owner Toma Birk' }).click()
  await expectAccessible(desk)
  await form.getByRole('button', { name: 'Give it its new owner' }).click()
  await expect(desk.getByText(/^from .* to Toma Birk\b/)).toBeVisible()
  await expect(desk.getByRole('link', { name: 'Toma Birk' }).first()).toBeVisible()
  // Entered for the wrong car: it is theirs again who had it, with the visits that had gone over.
  await desk.getByRole('button', { name: 'Take the change of owner back' }).click()
  const asked = desk.getByRole('dialog')
  await expect(asked.or(desk.getByRole('link', { name: 'Abel Thistle' })).first()).toBeVisible()
  if (await asked.isVisible()) await asked.getByRole('button').last().click()
  await expect(desk.getByRole('link', { name: 'Abel Thistle' })).toBeVisible()
  await expect(desk.getByRole('button', { name: 'Take the change of owner back' })).toHaveCount(0)
})
