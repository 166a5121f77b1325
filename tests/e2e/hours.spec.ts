import type { Page } from '@playwright/test'
import { dragByFinger, dragByMouse, middleOf } from './drag.ts'
import { expect, expectAccessible, test } from './fixtures.ts'
import { tabTo } from './keyboard.ts'

test.use({
  shopNow: '2026-04-15T13:40:00Z',
  shopDemo: true,
  hasTouch: true,
  viewport: { width: 1366, height: 768 },
})

const hours = (page: Page) => page.getByRole('form', { name: 'Opening hours' })
const end = (page: Page, name: string) => hours(page).getByRole('slider', { name, exact: true })
const field = (page: Page, name: string) => hours(page).getByRole('textbox', { name, exact: true })

for (const [hand, drag] of [
  ['the mouse', dragByMouse],
  ['a finger', dragByFinger],
] as const)
  test(`with ${hand} the end of a day is dragged, and its figure follows`, async ({ desk, shop }) => {
    await shop.enter(desk, '/settings/hours')
    const opens = await middleOf(end(desk, 'Tuesday, opens'))
    const closes = await middleOf(end(desk, 'Tuesday, closes'))
    const hour = (closes.x - opens.x) / 10
    await drag(end(desk, 'Tuesday, closes'), { x: closes.x + 2 * hour + 2, y: closes.y })
    await expect(field(desk, 'Tuesday closes')).toHaveValue('20:00')
    await drag(end(desk, 'Tuesday, opens'), { x: opens.x + 14 * hour, y: opens.y })
    await expect(field(desk, 'Tuesday opens')).toHaveValue('19:45')
    await expect(end(desk, 'Tuesday, opens')).toHaveAttribute('aria-valuetext', '19:45')
  })

test('with the keyboard an end is moved by quarters, stops at its neighbours, and is saved', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/settings/hours')
  await expectAccessible(desk)
  const saturday = end(desk, 'Saturday, closes')
  await tabTo(saturday)
  for (const key of ['ArrowRight', 'PageUp', 'ArrowLeft']) await desk.keyboard.press(key)
  await expect(field(desk, 'Saturday closes')).toHaveValue('16:00')
  await hours(desk).getByRole('button', { name: 'Save' }).click()
  await expect(hours(desk).getByRole('button', { name: 'Save' })).toBeDisabled()
  await desk.reload()
  await expect(saturday).toHaveAttribute('aria-valuetext', '16:00')
  await saturday.press('Home')
  await expect(field(desk, 'Saturday closes')).toHaveValue('09:15')
})

test('of two windows that drag a day the second is told', async ({ desk, shop, context }) => {
  const other = await context.newPage()
  await shop.enter(desk, '/settings/hours')
  await shop.enter(other, '/settings/hours')
  await end(desk, 'Friday, closes').press('ArrowRight')
  await end(other, 'Friday, opens').press('ArrowLeft')
  await hours(desk).getByRole('button', { name: 'Save' }).click()
  await expect(other.getByText('Changed in another window')).toBeVisible()
  await other.getByRole('button', { name: 'Show what is there now' }).click()
  await expect(end(other, 'Friday, closes')).toHaveAttribute('aria-valuetext', '18:15')
  await expect(field(other, 'Friday opens')).toHaveValue('08:00')
})
