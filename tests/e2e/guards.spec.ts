import type { Locator, Page, Route } from '@playwright/test'
import { expect, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { Settings } from './pages/Settings.ts'

test.use({ shopDemo: true })

const newCustomer = (desk: Page): { form: Locator; name: Locator } => {
  const form = desk.getByRole('form', { name: 'A new customer' })
  return { form, name: form.getByRole('textbox', { name: 'Name' }) }
}

test('typed text is asked about before another screen or a closed window would lose it', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/customers/new')
  const { name } = newCustomer(desk)
  await name.fill('Twyla Ashgrove')
  const question = desk.getByRole('dialog', { name: 'Not saved yet' })
  const board = desk.getByRole('link', { name: 'Board', exact: true })

  await board.click()
  await expect(question).toContainText('What you typed in “A new customer” would be lost.')
  await question.getByRole('button', { name: 'Stay here' }).click()
  await expect(question).toHaveCount(0)
  await expect(desk).toHaveURL(/\/customers\/new$/)
  await expect(name).toHaveValue('Twyla Ashgrove')

  const closing = desk.waitForEvent('dialog')
  await desk.close({ runBeforeUnload: true })
  const asked = await closing
  expect(asked.type()).toBe('beforeunload')
  await asked.dismiss()
  await expect(name).toHaveValue('Twyla Ashgrove')

  await board.click()
  await question.getByRole('button', { name: 'Leave without saving' }).click()
  await expect(desk).toHaveURL(/\/$/)
  const closed = desk.waitForEvent('close')
  await desk.close({ runBeforeUnload: true })
  await closed
})

test('two clicks at one instant make one customer', async ({ desk, shop }) => {
  await shop.enter(desk, '/customers/new')
  const { form, name } = newCustomer(desk)
  await name.fill('Perrin Holloway')
  // Closer together than a hand can: React draws nothing in between.
  await form.getByRole('button', { name: 'Save' }).evaluate((button: HTMLButtonElement) => {
    button.click()
    button.click()
  })
  await expect(desk.getByRole('heading', { level: 1, name: 'Perrin Holloway' })).toBeVisible()
  const { customers } = await pageApi(desk).customers.find.query({ text: 'Perrin Holloway' })
  expect(customers).toHaveLength(1)
})

test('what is not there is said to be not there, with a way on', async ({ desk, shop }) => {
  for (const [address, words, way] of [
    ['/jobs/none', 'This job is not there; look at the board again.', 'To the board'],
    ['/jobs/none/applied', 'This job is not there; look at the board again.', 'To the board'],
    ['/cars/none', 'This car is not on file; look it up again.', 'All customers'],
    ['/customers/none', 'There is no such customer; look them up again.', 'All customers'],
    ['/shelf/product/none', 'This product is not there; look at the shelf again.', 'To the shelf'],
  ] as const) {
    await shop.enter(desk, address)
    await expect(desk.getByRole('alert')).toHaveText(words)
    // Asked for again, as on every return to the window, it goes on saying so.
    const asked = desk.waitForResponse(/\/trpc\//)
    await desk.evaluate(() => document.dispatchEvent(new Event('visibilitychange')))
    await asked
    await expect(desk.getByText('Looking up')).toHaveCount(0)
    await desk.getByRole('main').getByRole('link', { name: way }).click()
    await expect(desk).not.toHaveURL(new RegExp(`${address}$`))
  }
})

test.describe('a wrong figure in one row', () => {
  test.use({ allowedErrors: [/./] })

  test('takes neither the screen down nor what was typed', async ({ page: desk, shop }) => {
    // Before it is let in: at the first screen the shop is read already, and no later one reads it anew.
    await desk.route(/\/trpc\/(.*,)?(products\.list|shop\.get)/, spoil)
    await shop.enter(desk, '/settings/products')
    const settings = new Settings(desk)
    const broken = desk.getByRole('alert').filter({ hasText: 'This part cannot be shown' })
    await settings.row('Ovrel One').click()
    await expect(broken).toBeVisible()
    await settings.choose('Ovrel Two')
    await expect(broken).toHaveCount(0)

    await settings.show('Treatments')
    await desk.getByRole('button', { name: 'Add a treatment' }).click()
    const form = desk.getByRole('form', { name: 'A new treatment' })
    const name = form.getByRole('textbox', { name: 'Name', exact: true }).first()
    const longer = form.getByRole('checkbox', { name: 'Longer on worn paint' })
    await name.fill('Winter ready')
    await form.getByText(/^More: helpers/).click()
    await longer.click()
    await expect(broken).toBeVisible()
    await broken.getByRole('button', { name: 'Undo the last typing' }).click()
    await expect(broken).toHaveCount(0)
    await expect(name).toHaveValue('Winter ready')
    await form.getByText(/^More: helpers/).click()
    await expect(longer).not.toBeChecked()
  })
})

/** Lets a product's profile arrive without its figures, and the shop without its factors, as after a slip in the database. */
async function spoil(route: Route): Promise<void> {
  const response = await route.fetch()
  const body = JSON.stringify(JSON.parse(await response.text()), (_key, value) => {
    if (value?.name === 'Ovrel One') return { ...value, cureProfile: {} }
    if (value?.conditionFactors) return { ...value, conditionFactors: null }
    return value
  })
  await route.fulfill({ response, body })
}
