import type { Locator } from '@playwright/test'
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

const at = '/settings/treatments/demo-two-layers'
const stepsOf = (form: Locator) => form.locator('button[aria-pressed]')

/** The names of the steps as the chain shows them, once it is there. */
async function namesIn(form: Locator): Promise<string[]> {
  await expect(stepsOf(form).first()).toBeVisible()
  return await form.locator('button[aria-pressed] b').allTextContents()
}

test('the first look holds name, chain and the step in hand, and another size is another picture', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, at)
  const form = desk.getByRole('form', { name: 'Two layers' })
  for (const field of ['Name', 'Stage', 'Takes, medium', 'People'])
    await expect(form.getByLabel(field, { exact: true }).last()).toBeInViewport({ ratio: 1 })
  const refine = form.getByRole('button', { name: /Refine/ })
  await expect(refine).toHaveAccessibleName(/2 h 30/)
  const width = (await refine.boundingBox())!.width
  await form.getByText('XL', { exact: true }).click()
  await expect(refine).not.toHaveAccessibleName(/2 h 30/)
  await refine.click()
  await expect(form.getByRole('textbox', { name: 'Takes, medium' })).toHaveValue('2 h 30')
  await form.getByRole('textbox', { name: 'Takes, extra large' }).fill('8 h')
  await expect.poll(async () => (await refine.boundingBox())!.width).toBeGreaterThan(width)
  await expectAccessible(desk)
})

test('by the keyboard alone a step is moved, added, taken out, and saved', async ({ desk, shop }) => {
  await shop.enter(desk, at)
  const form = desk.getByRole('form', { name: 'Two layers' })
  const before = await namesIn(form)
  await tabTo(stepsOf(form).first())
  await desk.keyboard.press('ArrowRight')
  await expect(stepsOf(form).nth(1)).toBeFocused()
  await desk.keyboard.press('Shift+ArrowRight')
  await expect(stepsOf(form).nth(2)).toBeFocused()
  expect(await namesIn(form)).toEqual([before[0], before[2], before[1], ...before.slice(3)])
  await desk.keyboard.press('Delete')
  expect(await namesIn(form)).toEqual([before[0], before[2], ...before.slice(3)])
  await desk.keyboard.press('Home')
  await desk.keyboard.press('Insert')
  await expect(form.getByRole('group', { name: 'Step 2' }).getByLabel('Name')).toBeFocused()
  await desk.keyboard.type('Foam')
  await desk.keyboard.press('Enter')
  await expect(new Settings(desk).save(form)).toBeDisabled()
  await desk.reload()
  await expect(stepsOf(form).nth(1)).toHaveAccessibleName(/Foam/)
  expect(await namesIn(form)).toEqual([before[0], 'Foam', before[2], ...before.slice(3)])
})

for (const [hand, drag] of [
  ['the mouse', dragByMouse],
  ['a finger', dragByFinger],
] as const)
  test(`with ${hand} a step is moved, put between two others and taken out`, async ({ desk, shop }) => {
    await shop.enter(desk, at)
    const form = desk.getByRole('form', { name: 'Two layers' })
    const before = await namesIn(form)
    const third = await middleOf(stepsOf(form).nth(2))
    await drag(stepsOf(form).first(), { x: third.x + 12, y: third.y })
    const moved = [before[1], before[2], before[0], ...before.slice(3)]
    await expect.poll(() => namesIn(form)).toEqual(moved)
    await expect(form.getByRole('group', { name: 'Step 3' }).getByLabel('Name')).toHaveValue(before[0] ?? '')
    const second = await middleOf(stepsOf(form).nth(1))
    await drag(form.getByRole('button', { name: '+ Step' }), { x: second.x - 12, y: second.y })
    await expect.poll(() => namesIn(form)).toEqual([moved[0], 'Step without a name', ...moved.slice(1)])
    const out = form.getByRole('button', { name: /^Take out Step/ })
    await drag(stepsOf(form).nth(1), await middleOf(out))
    await expect.poll(() => namesIn(form)).toEqual(moved)
  })

test('a refused step is marked in the chain and opened at its field, also behind More', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, at)
  const settings = new Settings(desk)
  const form = desk.getByRole('form', { name: 'Two layers' })
  await stepsOf(form).nth(4).click()
  await form.getByText(/^More/).click()
  const most = form.getByRole('textbox', { name: 'Waits at most' })
  await form.getByRole('textbox', { name: 'Waits at least' }).fill('9 h')
  await most.fill('1 h')
  await form.getByText(/^More/).click()
  await stepsOf(form).first().click()
  await settings.save(form).click()
  await expect(most).toBeFocused()
  await expect(most).toHaveAccessibleDescription(/exchange them/)
  await expect(stepsOf(form).nth(4)).toHaveAccessibleName(/something is wrong/)
  await expect(form.getByRole('group', { name: 'Step 5' })).toBeVisible()
})

test('what cannot be read is not left behind with its step', async ({ desk, shop }) => {
  await shop.enter(desk, at)
  const form = desk.getByRole('form', { name: 'Two layers' })
  const takes = form.getByRole('textbox', { name: 'Takes, large' })
  await takes.fill('soon')
  await stepsOf(form).nth(2).click()
  await expect(takes).toBeFocused()
  await expect(form.getByRole('group', { name: 'Step 1' })).toBeVisible()
})

test('of two windows that move a step the second is told', async ({ desk, shop, context }) => {
  const other = await context.newPage()
  await shop.enter(desk, at)
  await shop.enter(other, at)
  const [form, there] = [desk, other].map(page => page.getByRole('form', { name: 'Two layers' }))
  await stepsOf(there!).nth(1).press('Delete')
  await stepsOf(form!).first().press('Shift+ArrowRight')
  const saved = await namesIn(form!)
  await new Settings(desk).save(form!).click()
  await expect(new Settings(desk).save(form!)).toBeDisabled()
  await new Settings(other).save(there!).click()
  await expect(there!.getByRole('alert').first()).toHaveText(/Somebody else changed this treatment/)
  await there!.getByRole('button', { name: 'Show what is there now' }).click()
  await expect.poll(() => namesIn(there!)).toEqual(saved)
})
