import { readFileSync } from 'node:fs'
import { inColours } from './accessible.ts'
import { expect, expectAccessible, test } from './fixtures.ts'
import { tabTo } from './keyboard.ts'
import { Settings, sections } from './pages/Settings.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

const rows = { Bays: 'Bay 3', Crew: 'Mika', Treatments: 'Two layers', Products: 'Ovrel Two' } as const

test('every section is accessible, in light and dark, with a row open', async ({ desk, shop }) => {
  await shop.enter(desk, '/settings')
  const settings = new Settings(desk)
  for (const section of sections) {
    await settings.show(section)
    if (section in rows) await settings.choose(rows[section as keyof typeof rows])
    for (const colorScheme of ['light', 'dark'] as const) {
      await inColours(desk, colorScheme)
      await expectAccessible(desk)
    }
  }
})

test('a bad figure is refused beside its field, and a good one is kept', async ({ desk, shop }) => {
  await shop.enter(desk, '/settings/treatments')
  const settings = new Settings(desk)
  const form = await settings.choose('Two layers')
  const takes = form.getByRole('textbox', { name: 'Takes, large' })
  await form.getByRole('textbox', { name: 'What it is, for the customer' }).fill('Two layers in one visit.')
  await takes.fill('-30')
  await settings.save(form).click()
  await expect(takes).toBeFocused()
  await expect(takes).toHaveAccessibleDescription(/Write a duration/)
  await takes.fill('1 h 20')
  await settings.save(form).click()
  await expect(settings.save(form)).toBeDisabled()
  await desk.reload()
  await expect(takes).toHaveValue('1 h 20')
})

test('of two windows on one bay the second is told, and shows what is there', async ({
  desk,
  shop,
  context,
}) => {
  const other = await context.newPage()
  await shop.enter(desk, '/settings/bays')
  await shop.enter(other, '/settings/bays')
  const [here, there] = [new Settings(desk), new Settings(other)]
  const form = await here.choose('Bay 2')
  const otherForm = await there.choose('Bay 2')
  await otherForm.getByRole('textbox', { name: 'Name' }).fill('Polishing')
  await form.getByRole('textbox', { name: 'Name' }).fill('Bay two')
  await here.save(form).click()
  await expect(here.row('Bay two')).toBeVisible()
  await expect(other.getByText('Changed in another window')).toBeVisible()
  const stale = other.getByRole('form', { name: 'Bay two' })
  await there.save(stale).click()
  await expect(stale.getByRole('alert')).toHaveText(/Somebody else changed this bay/)
  await stale.getByRole('button', { name: 'Show what is there now' }).click()
  await expect(stale.getByRole('textbox', { name: 'Name' })).toHaveValue('Bay two')
  await expect(stale.getByRole('alert')).toHaveCount(0)
})

test('a bay with cars booked says which, and stays', async ({ desk, shop }) => {
  await shop.enter(desk, '/settings/bays')
  await new Settings(desk).choose('Bay 3')
  await desk.getByRole('button', { name: 'Archive this bay' }).click()
  await expect(desk.getByRole('alert')).toHaveText(/Cars are booked into this bay.*Job \d+ \(/s)
  await expectAccessible(desk)
})

test('a closed weekday names the booked cars first; with the keyboard it is left as it is', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/settings/hours')
  const monday = desk.getByRole('checkbox', { name: 'Monday' })
  await tabTo(monday)
  await desk.keyboard.press('Space')
  await tabTo(desk.getByRole('form', { name: 'Opening hours' }).getByRole('button', { name: 'Save' }))
  await desk.keyboard.press('Enter')
  const dialog = desk.getByRole('dialog', { name: 'This touches booked cars' })
  await expect(dialog).toContainText(/Job \d+ \(\w/)
  await expectAccessible(desk)
  await tabTo(dialog.getByRole('button', { name: 'Leave it as it is' }))
  await desk.keyboard.press('Enter')
  await expect(dialog).toHaveCount(0)
  await desk.reload()
  await expect(monday).toBeChecked()
})

test('a closure that overlaps another is refused beside its date', async ({ desk, shop }) => {
  await shop.enter(desk, '/settings/bays')
  await new Settings(desk).choose('Bay 1')
  const closures = desk.getByRole('region', { name: 'Closed for a time' })
  const from = closures.getByLabel('From', { exact: true })
  for (const round of [1, 2]) {
    await closures.getByRole('button', { name: 'Close it for a time' }).click()
    await from.fill('2026-08-01')
    await closures.getByLabel('To', { exact: true }).fill('2026-08-03')
    await closures.getByRole('button', { name: 'Save' }).click()
    if (round === 1) await expect(closures.getByRole('listitem')).toHaveCount(1)
  }
  await expect(from).toBeFocused()
  await expect(from).toHaveAccessibleDescription(/It overlaps the one from Sat 1 August 2026, 00:00/)
})

test('a figure of a cure profile shows its source and moves the curve', async ({ desk, shop }) => {
  await shop.enter(desk, '/settings/products')
  const form = await new Settings(desk).choose('Ovrel One')
  const curve = form.getByRole('img', { name: /Degree of cure/ })
  await expect(curve).toHaveAccessibleName(/Earliest pick-up after 12 h/)
  await expect(form.getByRole('combobox', { name: 'Source of: Earliest pick-up' })).toHaveValue(
    'common practice',
  )
  await form.getByRole('textbox', { name: 'Earliest pick-up' }).fill('14 h')
  await expect(curve).toHaveAccessibleName(/Earliest pick-up after 14 h/)
})

test('what is saved for whoever looks after the app is what was shown', async ({ desk, shop }) => {
  await shop.enter(desk, '/settings/diagnostics')
  const shown = await desk.getByRole('region', { name: 'What will be saved' }).locator('pre').textContent()
  expect(shown).toContain('Last errors (UTC)\n  none')
  const saved = desk.waitForEvent('download')
  await desk.getByRole('link', { name: 'Save as a file' }).click()
  const file = await saved
  expect(file.suggestedFilename()).toBe('lustrum-diagnostics.txt')
  expect(readFileSync(await file.path(), 'utf8')).toBe(shown)
})

test('times, days and weeks are written as the shop chose, at once and on every screen', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/settings')
  const form = desk.getByRole('form', { name: 'Shop' })
  const choose = async (name: string, option: string) => {
    await form.getByRole('combobox', { name }).click()
    await desk.getByRole('option', { name: option }).click()
  }
  await choose('Times', 'Usual there: 5:30 pm')
  await choose('Order of day and month', 'Usual there: 9/14')
  await choose('The week begins on', 'Usual there: Sunday')
  const saved = desk.waitForResponse(/shop\.update/)
  await new Settings(desk).save(form).click()
  await saved
  await expect(new Settings(desk).save(form)).toBeDisabled()
  await new Settings(desk).show('Hours')
  await expect(
    desk.getByRole('group', { name: 'Opening hours of the week' }).getByRole('checkbox').first(),
  ).toHaveAccessibleName('Sunday')
  await expect(desk.getByRole('textbox', { name: 'Monday opens' })).toHaveValue(/^8:00\sam$/)
  await shop.enter(desk, '/')
  const board = desk.getByRole('main')
  await expect(board.getByText(/^10\sam$/).first()).toBeVisible()
  await expect(board.getByText(/^now 9:\d\d\sam$/)).toBeVisible()
  await shop.enter(desk, '/morning')
  await expect(desk.getByText(/Wed, April 15/).first()).toBeVisible()
  await expect(desk.getByText(/\d\d:\d\d(?!\s[ap]m)/)).toHaveCount(0)
})
