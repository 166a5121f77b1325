import { expect, expectAccessible, test } from './fixtures.ts'

// Wednesday 15 April 2026, 09:40 on the demo shop's clock in summer time.
test.use({ shopNow: '2026-04-15T07:40:00Z', shopDemo: true })

test('a batch is mixed, gone off and thrown away; pads are demoted; a rule for waste stands beside the work', async ({
  desk,
  shop,
}) => {
  await test.step('a batch is mixed from the concentrate', async () => {
    await shop.enter(desk, '/shelf')
    await desk.getByRole('link', { name: 'Ambry Rinse' }).click()
    await desk.getByRole('button', { name: 'Mix a batch' }).click()
    const mix = desk.getByRole('form', { name: /^Mix/ })
    await mix.getByLabel('How much').fill('500 ml')
    await expect(mix).toContainText('1.7 fl oz of Ambry Foam')
    await expect(mix).toContainText('into 15.2 fl oz of water')
    await expectAccessible(desk)
    await mix.getByRole('button', { name: 'It is mixed' }).click()
    await expect(desk.getByText(/✓ mixed 16.91 fl oz of Ambry Rinse/)).toBeVisible()
    await expect(desk.getByRole('row', { name: /mixed 1:9 15 Apr/ })).toBeVisible()
  })

  await test.step('it goes cloudy, and the ledger says so', async () => {
    await desk.getByRole('button', { name: /^Throw away no/ }).click()
    const waste = desk.getByRole('form', { name: /^Thrown away/ })
    await expect(waste).toContainText('Wash and rinse water')
    await waste.getByRole('button', { name: 'Throw it away' }).click()
    await expect(waste.getByLabel('More about it')).toHaveAttribute('aria-invalid', 'true')
    await waste.getByRole('combobox', { name: 'What was wrong with it' }).click()
    await desk.getByRole('option', { name: 'Cloudy' }).click()
    await waste.getByRole('button', { name: 'Throw it away' }).click()
    await expect(desk.getByRole('row', { name: /thrown away/ })).toContainText('cloudy')
  })

  await test.step('a set of pads has been washed often enough', async () => {
    await shop.enter(desk, '/shelf/product/demo-pads')
    await desk.getByRole('tab', { name: 'In use and washed' }).click()
    const red = desk.getByRole('row', { name: /Red ring/ })
    await expect(red).toContainText('washed often enough: now for Wheels')
    await red.getByRole('button', { name: 'Demote Red ring' }).click()
    await desk.getByRole('button', { name: 'Demote it' }).click()
    await expect(red).toContainText('0 of 10')
    await red.getByRole('button', { name: 'Washed Red ring' }).click()
    await expect(red).toContainText('1 of 10')
    await expectAccessible(desk)
  })

  await test.step('the shop’s rule for its cloths stands on the morning sheet', async () => {
    await shop.enter(desk, '/shelf/safety')
    const rule = desk.getByRole('textbox', { name: 'Cloths wet with solvent or oil' })
    await rule.fill('Grey can outside the door.')
    await desk.getByRole('button', { name: 'Save the rule' }).click()
    await expect(desk.getByRole('button', { name: 'Save the rule' })).toHaveCount(0)
    await expectAccessible(desk)
    await shop.enter(desk, '/morning')
    const notes = desk.getByRole('complementary', { name: 'Where the waste goes' })
    await expect(notes).toContainText('Grey can outside the door.')
    await expect(notes).toContainText('closed metal container')
    await expectAccessible(desk)
  })
})
