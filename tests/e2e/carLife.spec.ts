import { filledActs } from './filled.ts'
import { expect, expectAccessible, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { addKeeper, setUpUpkeepShop, textKeeper } from './shops/upkeepShop.ts'

// Tuesday 14 April 2026, 09:30 on the shop's clock.
test.use({ shopNow: '2026-04-14T08:30:00Z' })

test('a car is found gone: a nearer day is proposed, nothing moves before it is accepted, and it is taken back', async ({
  desk,
  shop,
}) => {
  const { topperId } = await setUpUpkeepShop(pageApi(desk))
  const { vehicleId } = await addKeeper(pageApi(desk), topperId, textKeeper)
  await shop.enter(desk, `/cars/${vehicleId}`)
  const plan = desk.getByRole('row', { name: /topper renewal/ })
  // 1 December and 182 days is 1 June 2026, a Monday.
  await expect(plan).toContainText('Mon 1 June 2026')

  // One act is filled: the next.
  await expect.poll(() => filledActs(desk)).toEqual(['Book: topper renewal'])
  await desk.getByRole('button', { name: 'Record an inspection' }).click()
  const form = desk.getByRole('form', { name: 'Record an inspection' })
  await form.getByRole('button', { name: 'Save the inspection' }).click()
  await expect(form.getByText('Say what at least one panel looked like.')).toBeVisible()
  for (const when of ['before', 'after']) {
    await form.getByRole('combobox', { name: `roof, ${when} the wash` }).click()
    await desk.getByRole('option', { name: /A film/ }).click()
  }
  await form.getByLabel('Looked at on').fill('2026-04-13')
  await expectAccessible(desk)
  await form.getByRole('button', { name: 'Save the inspection' }).click()
  await expect(form).toHaveCount(0)
  await expect(desk.getByRole('img', { name: /Seen still working: 0, gone: 1\./ })).toBeVisible()
  await expect(plan).toContainText('Mon 1 June 2026')

  const proposal = desk.getByRole('alert').filter({ hasText: 'It was found gone on 13 April 2026' })
  await proposal.getByRole('button', { name: 'Leave it' }).click()
  await expect(desk.getByText('Left as it is: due on Mon 1 June 2026.').first()).toBeVisible()
  await desk.getByRole('button', { name: 'Look again' }).first().click()
  await desk.getByRole('button', { name: 'Move it to Tue 14 April' }).click()
  await expect(plan).toContainText('Tue 14 April 2026')
  await expectAccessible(desk)
  await desk.getByRole('status', { name: 'Last act' }).getByRole('button', { name: 'Undo' }).click()
  await expect(plan).toContainText('Mon 1 June 2026')
  await desk.getByRole('button', { name: /^Take back: Topper gone/ }).click()
  await expect(desk.getByRole('img', { name: /Seen still working: 0, gone: 0\./ })).toBeVisible()
})

test.describe('on one line', () => {
  // A shop of its own.
  test.use({ shopNow: '2026-04-14T08:31:00Z' })

  test('a car’s life is one line, gone along with the arrow keys and by finger, each moment told beneath', async ({
    desk,
    shop,
  }) => {
    const { topperId } = await setUpUpkeepShop(pageApi(desk))
    const { vehicleId } = await addKeeper(pageApi(desk), topperId, textKeeper)
    await shop.enter(desk, `/cars/${vehicleId}`)
    const life = desk.getByRole('region', { name: 'Its life' })
    const line = life.getByRole('toolbar', { name: 'Moments of its life' })
    await expect(life.getByRole('paragraph')).toHaveText('Next: topper renewal due Mon 1 June')
    // One stop for the Tab key.
    await expect(line.locator('[tabindex="0"]')).toHaveCount(1)
    await line.locator('[tabindex="0"]').focus()
    await desk.keyboard.press('Home')
    await expect(life.getByRole('paragraph')).toContainText(/1 December 2025: .+ laid/)
    await desk.keyboard.press('ArrowRight')
    await expect(life.getByRole('paragraph')).toContainText('topper renewal due Mon 1 June')
    await expect(line.locator('[aria-current="true"]')).toBeFocused()
    const box = (await line.getByRole('button').first().boundingBox())!
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44)
    await line.getByRole('button').first().click()
    await expect(life.getByRole('paragraph')).toContainText(/1 December 2025: .+ laid/)
  })
})
