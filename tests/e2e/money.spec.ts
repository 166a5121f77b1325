import type { Page } from '@playwright/test'
import { expect, expectAccessible, test } from './fixtures.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

/** Chooses treatments of one variant. */
async function treatments(page: Page, variant: number, names: readonly string[]): Promise<void> {
  const field = page.getByRole('textbox', { name: `Treatments of variant ${variant}` })
  await field.click()
  for (const name of names) await page.getByRole('option', { name, exact: true }).click()
  await page.keyboard.press('Escape')
}

/** Draws a line across the field to sign in. */
async function sign(page: Page): Promise<void> {
  const box = (await page.getByRole('img', { name: 'Signature' }).boundingBox())!
  await page.mouse.move(box.x + 20, box.y + 40)
  await page.mouse.down()
  for (const [x, y] of [
    [60, 90],
    [120, 30],
    [180, 100],
  ] as const)
    await page.mouse.move(box.x + x, box.y + y, { steps: 4 })
  await page.mouse.up()
}

test('three ways are quoted side by side, one is signed and booked, invoiced with its deposit and paid in two parts', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/money/newQuote/demo-vehicle-40')
  for (const [i, name] of ['Wash and decontaminate', 'One layer', 'Two layers'].entries()) {
    if (i > 0) await desk.getByRole('button', { name: 'Add a variant' }).click()
    await treatments(desk, i + 1, [name])
  }
  await desk.getByRole('button', { name: 'Work it out' }).click()
  const best = desk.getByRole('region', { name: 'Best' })
  await expect(best).toContainText('Upkeep, 3 years')
  await expect(best).toContainText('Away')
  await expectAccessible(desk)
  await best.getByRole('button', { name: 'Choose Best' }).click()
  await expect(desk.getByRole('button', { name: 'Accept it' })).toBeDisabled()
  await sign(desk)
  await desk.getByRole('button', { name: 'Accept it' }).click()
  await desk
    .getByRole('button', { name: /^Book .*, home / })
    .first()
    .click()
  await desk.getByRole('link', { name: 'To its booking' }).click()
  await desk.getByRole('link', { name: 'bill', exact: true }).click()
  await expect(desk.getByText('Deposit asked for:')).toBeVisible()
  await desk.getByRole('button', { name: /^Take / }).click()
  await expect(desk.getByText('Card, deposit')).toBeVisible()
  await desk.getByRole('button', { name: /^Issue the invoice/ }).click()
  await expect(desk.getByRole('link', { name: /^Invoice INV-/ })).toBeVisible()
  await expectAccessible(desk)
  const paid = desk.getByRole('form', { name: 'Payment' })
  await paid.getByLabel('Paid').fill('100')
  await desk.getByRole('button', { name: /^Take / }).click()
  await expect(desk.getByText(/to pay$/)).toBeVisible()
  await desk.getByRole('button', { name: /^Take / }).click()
  await expect(desk.getByText('✓ Paid')).toBeVisible()
})
