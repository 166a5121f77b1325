import { expect, expectAccessible, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

test('a day is typed as the shop writes it, moved by arrows and picked from its week, whatever the browser has', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/money/takings')
  const day = desk.getByRole('textbox', { name: 'Day' })
  const shown = (date: string) => desk.getByRole('heading', { name: date })
  const firstDay = desk.getByRole('dialog').getByRole('columnheader').first()
  await expect(day).toHaveValue('15/4/2026')

  await test.step('typed day first, in short, year first', async () => {
    for (const [typed, date, text] of [
      ['3/4/2026', 'Fri 3 April 2026', '3/4/2026'],
      ['14.4.26', 'Tue 14 April 2026', '14/4/2026'],
      ['2026-04-13', 'Mon 13 April 2026', '13/4/2026'],
      ['02042026', 'Thu 2 April 2026', '2/4/2026'],
    ] as const) {
      await day.fill(typed)
      await day.press('Enter')
      await expect(shown(date)).toBeVisible()
      await expect(day).toHaveValue(text)
    }
  })

  await test.step('what is no day is refused in words once it is left, and what was there stays', async () => {
    await day.fill('31/4/2026')
    await expect(day).not.toHaveAttribute('aria-invalid', 'true')
    await day.press('Tab')
    await expect(day).toHaveAccessibleDescription('Write a date such as 31/12/2026.')
    await expect(day).toHaveAttribute('aria-invalid', 'true')
    await expect(shown('Thu 2 April 2026')).toBeVisible()
    await expectAccessible(desk)
    await day.fill('31/3/2026')
    await expect(shown('Tue 31 March 2026')).toBeVisible()
    await expect(day).not.toHaveAttribute('aria-invalid', 'true')
  })

  await test.step('the arrows go a day on and back; Alt with one opens the calendar', async () => {
    await day.press('ArrowUp')
    await expect(shown('Wed 1 April 2026')).toBeVisible()
    await day.press('ArrowDown')
    await expect(shown('Tue 31 March 2026')).toBeVisible()
    await day.press('Alt+ArrowDown')
    await expect(firstDay).toHaveText('Mo')
    await expectAccessible(desk)
    await expect(desk.getByRole('button', { name: '31 March 2026' })).toBeFocused()
    await desk.keyboard.press('ArrowUp')
    await desk.keyboard.press('Enter')
    await expect(desk.getByRole('dialog')).toBeHidden()
    await expect(day).toBeFocused()
    await expect(shown('Tue 24 March 2026')).toBeVisible()
    await day.press('Alt+ArrowDown')
    await desk.keyboard.press('Escape')
    await expect(desk.getByRole('dialog')).toBeHidden()
    await expect(day).toBeFocused()
  })

  await test.step('a shop that writes the month first and begins its week on Sunday', async () => {
    const api = pageApi(desk)
    const now = (await api.shop.get.query())!
    await api.shop.update.mutate({ ...now, dateOrder: 'monthFirst', weekBegins: 7 })
    await shop.enter(desk, '/money/takings')
    await expect(day).toHaveValue('4/15/2026')
    await day.fill('3/4/2026')
    await expect(shown('Wed, March 4, 2026')).toBeVisible()
    await desk.getByRole('button', { name: 'Open the calendar' }).first().click()
    await expect(firstDay).toHaveText('Su')
    await desk.getByRole('button', { name: '10 March 2026' }).click()
    await expect(day).toHaveValue('3/10/2026')
    await expect(shown('Tue, March 10, 2026')).toBeVisible()
  })
})

test('in a dialog the calendar closes alone, and a date half typed is gone to instead of saved', async ({
  desk,
}) => {
  await desk.getByRole('button', { name: 'Sick or down…' }).click()
  const dialog = desk.getByRole('dialog', { name: 'Somebody is sick, or a bay is down' })
  const until = dialog.getByRole('textbox', { name: 'Until', exact: true })
  await until.press('Alt+ArrowDown')
  await expect(desk.getByRole('dialog')).toHaveCount(2)
  await desk.keyboard.press('Escape')
  await expect(desk.getByRole('dialog')).toHaveCount(1)
  await expect(until).toBeFocused()
  // Also where Escape comes before the calendar has taken the keys, or while it takes them.
  for (let turn = 0; turn < 6; turn++) {
    await until.press('Alt+ArrowDown')
    await desk.keyboard.press('Escape')
    await expect(desk.getByRole('dialog')).toHaveCount(1)
    await expect(until).toBeFocused()
  }
  await until.press('Alt+ArrowDown')
  await expect(desk.getByRole('dialog')).toHaveCount(2)
  await until.press('Escape')
  await expect(desk.getByRole('dialog')).toHaveCount(1)
  await expect(until).toBeFocused()
  await until.fill('31/2/2026')
  await dialog.getByRole('combobox', { name: 'Who or which bay' }).click()
  await desk.getByRole('option', { name: 'Mika' }).click()
  await dialog.getByRole('textbox', { name: 'What for' }).press('Enter')
  await expect(until).toBeFocused()
  await expect(until).toHaveAccessibleDescription(/^Write a date such as/)
  await desk.keyboard.press('Escape')
})
