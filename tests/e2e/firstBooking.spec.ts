import type { Locator } from '@playwright/test'
import { expect, test } from './fixtures.ts'
import { tabTo } from './keyboard.ts'
import { Book } from './pages/Book.ts'
import { Welcome } from './pages/Welcome.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', locale: 'en-US', timezoneId: 'America/New_York' })

test('from an empty folder to a first booking by the keyboard alone, in twelve acts at most', async ({
  desk,
}) => {
  let acts = 0
  /** Goes to a control by Tab and fills it: one act. */
  const type = async (field: Locator, words: string) => {
    await tabTo(field)
    await desk.keyboard.type(words)
    acts++
  }
  /** Goes to a control by Tab and presses it: one act. */
  const press = async (control: Locator, key = 'Enter') => {
    await tabTo(control)
    await desk.keyboard.press(key)
    acts++
  }

  const welcome = new Welcome(desk)
  await expect(welcome.name).toBeFocused()
  await type(welcome.name, 'Ashdown Paint Care')
  await type(welcome.crewName(1), 'Mika')
  await press(welcome.open)
  await expect(welcome.name).toBeHidden()
  const week = desk.getByRole('navigation', { name: 'Your first week' })
  await expect(week.getByRole('listitem')).toHaveCount(6)
  await press(desk.getByRole('link', { name: 'Book', exact: true }))
  const book = new Book(desk)
  // The screen that comes takes the focus into its first field.
  await expect(desk.getByLabel('Find by name, phone or plate')).toBeFocused()
  await press(desk.getByRole('button', { name: /^New customer/ }))
  await type(desk.getByLabel('New customer’s name'), 'Nora Quill')
  await type(desk.getByLabel('Phone', { exact: true }), '212 555 0199')
  await type(desk.getByLabel('Plate', { exact: true }), 'QLV 318')
  await press(book.treatment('Coating, one layer'), ' ')
  await press(book.hold)
  await press(book.confirm)
  await expect(desk.getByText('Booked: QLV 318, Nora Quill')).toBeVisible()
  expect(acts).toBeLessThanOrEqual(12)

  await press(desk.getByRole('link', { name: 'See the board' }))
  await expect(week.getByRole('listitem').filter({ hasText: 'A first booking' })).toContainText('✓')
})
