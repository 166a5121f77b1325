import { inColours } from './accessible.ts'
import { expect, expectAccessible, test } from './fixtures.ts'
import { tabTo, typePair } from './keyboard.ts'
import { Frame } from './pages/Frame.ts'
import { Settings } from './pages/Settings.ts'
import { Welcome } from './pages/Welcome.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', locale: 'en-CH', timezoneId: 'Europe/Zurich' })

test('an empty data folder has one screen, filled in from the browser, and accessible', async ({ desk }) => {
  const welcome = new Welcome(desk)
  await desk.goto(new URL('/settings/shop', desk.url()).href)
  await expect(welcome.name).toBeFocused()
  await expect(desk).toHaveURL(/\/welcome$/)
  await expect(welcome.zone).toHaveValue('Europe/Zurich')
  await expect(welcome.country).toHaveValue('Switzerland')
  await expect(welcome.money).toHaveValue(/^CHF/)
  for (const colorScheme of ['light', 'dark'] as const) {
    await inColours(desk, colorScheme)
    await expectAccessible(desk)
  }
})

test('times and weeks are written as in the country chosen, before there is a shop', async ({ desk }) => {
  const welcome = new Welcome(desk)
  const monday = welcome.opens('Monday')
  const firstDay = desk.getByRole('group', { name: 'Opening hours' }).getByRole('checkbox').first()
  // CLDR: Switzerland counts 24 hours and begins its week on Monday, the United States 12 and on Sunday.
  await expect(monday).toHaveValue('08:00')
  await expect(firstDay).toHaveAccessibleName('Monday')
  await welcome.country.fill('United States')
  await desk.getByRole('option', { name: 'United States', exact: true }).click()
  await expect(monday).toHaveValue(/^8:00\sam$/)
  await expect(firstDay).toHaveAccessibleName('Sunday')
  await monday.fill('7 am')
  await monday.press('Tab')
  await expect(monday).toHaveValue(/^7:00\sam$/)
  await welcome.country.fill('Switzerland')
  await desk.getByRole('option', { name: 'Switzerland', exact: true }).click()
  await expect(monday).toHaveValue('07:00')
})

test('what is missing is said beside its field, which is gone to; nothing is kept', async ({ desk }) => {
  const welcome = new Welcome(desk)
  await welcome.name.fill('Ashdown Paint Care')
  await welcome.open.click()
  await expect(welcome.crewName(1)).toBeFocused()
  await expect(welcome.crewName(1)).toHaveAccessibleDescription(/name is missing/)
  await welcome.opens('Monday').fill('soon')
  await welcome.open.click()
  await expect(welcome.opens('Monday')).toBeFocused()
  await expect(welcome.opens('Monday')).toHaveAccessibleDescription(/Write a time/)
  await desk.reload()
  await expect(desk).toHaveURL(/\/welcome$/)
})

test('a shop is set up with the keyboard alone, well under two minutes, and is there to book', async ({
  desk,
}) => {
  const welcome = new Welcome(desk)
  await expect(welcome.name).toBeFocused()
  await desk.keyboard.type('Ashdown Paint Care')
  await tabTo(welcome.opens('Monday'))
  await desk.keyboard.type('7')
  await tabTo(welcome.closes('Monday'))
  await desk.keyboard.type('16.30')
  await tabTo(desk.getByRole('button', { name: 'Same until Friday' }))
  await desk.keyboard.press('Enter')
  await expect(welcome.closes('Friday')).toHaveValue('16:30')
  await tabTo(welcome.crewName(1))
  await desk.keyboard.type('Mika')
  await desk.keyboard.press('Enter')
  await expect(new Frame(desk).bar).toBeVisible()
  await expect(desk).toHaveURL(/\/$/)

  const settings = new Settings(desk)
  await typePair(desk, 'g', 's')
  await settings.show('Hours')
  await expect(desk.getByRole('textbox', { name: 'Friday opens' })).toHaveValue('07:00')
  await settings.show('Treatments')
  await expect(settings.row('Coating, one layer')).toBeVisible()
})

test('the first run is over for good', async ({ desk, shop }) => {
  await desk.goto('about:blank')
  await shop.restart()
  await shop.enter(desk, '/welcome')
  await expect(desk).toHaveURL(/\/$/)
})
