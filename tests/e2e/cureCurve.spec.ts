import type { Page } from '@playwright/test'
import { dragByFinger, dragByMouse, middleOf } from './drag.ts'
import { expect, expectAccessible, test } from './fixtures.ts'
import { tabTo } from './keyboard.ts'
import { Settings } from './pages/Settings.ts'

test.use({
  shopNow: '2026-04-15T13:40:00Z',
  shopDemo: true,
  hasTouch: true,
  viewport: { width: 1366, height: 768 },
})

const at = '/settings/products/demo-ovrel-one'
const point = (page: Page, name: string) => page.getByRole('slider', { name, exact: true })
const figure = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true })

/** Saves what cars are booked with already, which is asked first. */
async function save(desk: Page): Promise<void> {
  const button = new Settings(desk).save(desk.getByRole('form', { name: 'Ovrel One' }))
  await button.click()
  await desk.getByRole('button', { name: 'Do it anyway' }).click()
  await expect(desk.getByRole('dialog')).toHaveCount(0)
  await expect(button).toBeDisabled()
}

for (const [hand, drag] of [
  ['the mouse', dragByMouse],
  ['a finger', dragByFinger],
] as const)
  test(`with ${hand} a point of the curve is dragged, and its figure follows`, async ({ desk, shop }) => {
    await shop.enter(desk, at)
    const advised = point(desk, 'Recommended pick-up')
    const [from, to] = [await middleOf(advised), await middleOf(point(desk, 'Full cure, early bound'))]
    await drag(advised, { x: (from.x + to.x) / 2, y: from.y })
    const words = (await advised.getAttribute('aria-valuetext')) ?? ''
    expect(words).toMatch(/^\d+ (h|d)/)
    await expect(figure(desk, 'Recommended pick-up')).toHaveValue(words)
    await drag(advised, { x: to.x + 300, y: from.y })
    await expect(figure(desk, 'Recommended pick-up')).toHaveValue(
      await figure(desk, 'Full cure, early bound').inputValue(),
    )
    const late = await figure(desk, 'Full cure, late bound').inputValue()
    const last = await middleOf(point(desk, 'Full cure, late bound'))
    await drag(point(desk, 'Full cure, late bound'), { x: last.x + 20, y: last.y })
    await expect(figure(desk, 'Full cure, late bound')).not.toHaveValue(late)
  })

test('with the keyboard a point goes on by sensible times, and what it was the data sheet’s is not', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, at)
  await expectAccessible(desk)
  const source = desk.getByRole('combobox', { name: 'Source of: Tack-free' })
  await source.selectOption('data sheet')
  await tabTo(point(desk, 'Tack-free'))
  const before = await figure(desk, 'Tack-free').inputValue()
  await desk.keyboard.press('ArrowRight')
  await expect(source).toHaveValue('common practice')
  await expect(figure(desk, 'Tack-free')).not.toHaveValue(before)
  await desk.keyboard.press('End')
  const pickUp = await figure(desk, 'Earliest pick-up').inputValue()
  await expect(figure(desk, 'Tack-free')).toHaveValue(pickUp)
  await desk.keyboard.press('PageDown')
  const moved = await figure(desk, 'Tack-free').inputValue()
  expect(moved).not.toBe(pickUp)
  await save(desk)
  await desk.reload()
  await expect(point(desk, 'Tack-free')).toHaveAttribute('aria-valuetext', moved)
})

test('of two windows that move a point the second is told', async ({ desk, shop, context }) => {
  const other = await context.newPage()
  await shop.enter(desk, at)
  await shop.enter(other, at)
  await point(other, 'Full cure, late bound').press('ArrowRight')
  await point(desk, 'Full cure, late bound').press('ArrowLeft')
  const saved = (await point(desk, 'Full cure, late bound').getAttribute('aria-valuetext')) ?? ''
  await save(desk)
  await expect(other.getByText('Changed in another window')).toBeVisible()
  await other.getByRole('button', { name: 'Show what is there now' }).click()
  await expect(point(other, 'Full cure, late bound')).toHaveAttribute('aria-valuetext', saved)
})
