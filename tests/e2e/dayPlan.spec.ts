import { showScreen } from './everyScreen.ts'
import { expect, expectAccessible, test } from './fixtures.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

test('the floor is re-laid from the board, a part accepted, and taken back', async ({ desk }) => {
  await desk.getByRole('button', { name: 'Re-lay' }).click()
  await expect(desk.getByRole('heading', { name: 'Re-lay the floor' })).toBeVisible()
  await desk.getByRole('button', { name: 'Look for a better plan' }).click()
  const standing = /proven|Nothing better|could stand better/
  await expect(desk.getByRole('status').filter({ hasText: standing })).toBeVisible()
  // However long the proof would take, a stop ends it and leaves what was found.
  const stop = desk.getByRole('button', { name: 'Stop' })
  if (await stop.isVisible()) await stop.click({ timeout: 2_000 }).catch(() => {})
  await expect(desk.getByRole('button', { name: 'Look again' })).toBeVisible()
  await expectAccessible(desk)
  const ticks = desk.getByRole('checkbox', { name: /^Accept / })
  if ((await ticks.count()) === 0) return
  await desk.getByRole('button', { name: /^Accept (it|all|\d)/ }).click()
  await expect(desk.getByText(/re-laid/)).toBeVisible()
  await desk.getByRole('button', { name: 'Take it back' }).click()
  await expect(desk.getByText(/re-laid/)).toBeHidden()
})

test('what if a bay is closed: every promise is shown, and discarding writes nothing', async ({ desk }) => {
  await showScreen(desk, '/plan/what-if')
  await desk.getByRole('combobox', { name: 'Which bay' }).click()
  await desk.getByRole('option').first().click()
  await desk.getByRole('button', { name: 'Show what becomes of every promise' }).click()
  await expect(desk.getByRole('region', { name: 'Every promise' })).toBeVisible()
  await expectAccessible(desk)
  await desk.getByRole('button', { name: 'Discard' }).click()
  await expect(desk.getByRole('form', { name: 'Suppose' })).toBeVisible()
})

test('the use of the bays is a picture, a week at a time', async ({ desk }) => {
  await showScreen(desk, '/plan/use')
  await expect(desk.getByRole('img', { name: /Hands-on \d+ h, Blocked while open/ }).first()).toBeVisible()
  await desk
    .getByRole('button', { name: /^Week of/ })
    .first()
    .click()
  await expect(desk.getByRole('heading', { name: /^Week of/ })).toBeVisible()
  await expectAccessible(desk)
})

test('a rush car that was made room for is booked with what was supposed of it', async ({ desk }) => {
  await showScreen(desk, '/plan/what-if')
  await desk.getByText('A rush car comes', { exact: true }).click()
  await desk.getByRole('combobox', { name: 'Treatments' }).press('ArrowDown')
  const option = desk.getByRole('option').first()
  const treatment = (await option.textContent())!
  await option.click()
  await desk.keyboard.press('Escape')
  await desk.getByRole('combobox', { name: 'Size' }).click()
  await desk.getByRole('option', { name: 'Large', exact: true }).click()
  await desk.getByRole('button', { name: 'Show what becomes of every promise' }).click()
  await expect(desk.getByText(/The rush car: comes/)).toBeVisible()
  await expect(desk.getByRole('columnheader', { name: 'All cars together' })).toBeVisible()
  const stop = desk.getByRole('button', { name: 'Stop' })
  if (await stop.isVisible()) await stop.click({ timeout: 2_000 }).catch(() => {})
  await desk.getByRole('button', { name: 'Keep it' }).click()
  await expect(desk.getByRole('heading', { name: 'Book a car' })).toBeVisible()
  await expect(desk.getByRole('checkbox', { name: treatment })).toBeChecked()
  await expect(desk.getByRole('radio', { name: 'L', exact: true })).toBeChecked()
})

test('a longer cure is kept for its car, and the profile that gives it to every car is one step away', async ({
  desk,
}) => {
  await showScreen(desk, '/plan/what-if')
  await desk.getByText('A cure takes longer', { exact: true }).click()
  await desk.getByRole('combobox', { name: 'Which car' }).click()
  await desk.getByRole('option').first().click()
  await desk.getByRole('button', { name: 'Show what becomes of every promise' }).click()
  await expect(desk.getByText(/gives this car the longer cure/)).toBeVisible()
  await expectAccessible(desk)
  await desk.getByRole('link', { name: 'Change the profile' }).click()
  await expect(desk.getByRole('heading', { name: 'Products' })).toBeVisible()
})
