import { expect, expectAccessible, test } from './fixtures.ts'

test.use({ locale: 'de-CH', timezoneId: 'Europe/Zurich' })

test('a shop begins in German, and its screens and refusals stay in it', async ({ desk, shop }) => {
  const name = desk.getByRole('textbox', { name: 'Name des Betriebs' })
  await expect(name).toBeFocused()
  await expectAccessible(desk)
  await name.fill('Ashdown Lackpflege')
  await desk.getByRole('button', { name: 'Betrieb öffnen', exact: true }).click()
  const mika = desk.getByRole('textbox', { name: 'Name: Mitarbeiter 1' })
  await expect(mika).toHaveAccessibleDescription(/Name des Mitarbeiters fehlt/)
  await mika.fill('Mika')
  await desk.getByRole('button', { name: 'Betrieb öffnen', exact: true }).click()
  await expect(desk.getByRole('navigation', { name: 'Seiten' })).toContainText('Tagesabschluss')
  await expect(desk.locator('html')).toHaveAttribute('lang', 'de')
  await desk.goto(`${shop.address}/settings/shop`)
  await expect(desk.getByRole('combobox', { name: 'Sprache der Bildschirme' })).toHaveValue('Deutsch')
  await expectAccessible(desk)
})
