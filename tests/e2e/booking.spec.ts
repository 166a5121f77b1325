import { expect, expectAccessible, test } from './fixtures.ts'
import { Board } from './pages/Board.ts'
import { Book } from './pages/Book.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

const caller = { name: 'Wren Calloway', phone: '+1 212 555 0188', plate: 'WRC 204' }

test('a two-layer coating is booked for a new caller, stands on the board, and is there after the plug was pulled', async ({
  desk,
  shop,
}) => {
  await desk.getByRole('link', { name: 'Book', exact: true }).click()
  const book = new Book(desk)
  await book.treatment('Two layers').check()
  await expect(book.offers.first()).toBeChecked()
  await expectAccessible(desk)
  await book.newCaller(caller)
  await book.offer(/Fewest blocked hours/).check()
  await book.hold.click()
  await expect(desk.getByText('Held for WRC 204, Wren Calloway')).toBeVisible()
  await book.confirm.click()
  await expect(desk.getByText('Booked: WRC 204, Wren Calloway')).toBeVisible()
  await desk.getByRole('link', { name: 'See the board' }).click()
  const before = await (await new Board(desk).find(caller.plate)).getAttribute('aria-label')
  expect(before).toContain('Wren Calloway')

  await shop.kill()
  await shop.restart()
  await shop.enter(desk, '/')
  const again = await new Board(desk).find(caller.plate)
  expect(await again.getAttribute('aria-label')).toBe(before)
  await again.press('Enter')
  await expect(desk.getByRole('heading', { name: /WRC 204/ })).toBeVisible()
  await expect(desk.getByRole('cell', { name: /^Second layer/ })).toBeVisible()
  await expectAccessible(desk)
})

test('a phone number that is none is refused beside its field, and what was said is kept', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/book')
  const book = new Book(desk)
  await book.treatment('Wash and decontaminate').check()
  await book.newCaller({ name: 'Ilsa Brandt', phone: '12', plate: 'IB 1' })
  await book.offer(/Soonest home/).check()
  await book.hold.click()
  const phone = desk.getByLabel('Phone', { exact: true })
  await expect(phone).toHaveAttribute('aria-invalid', 'true')
  await expect(desk.getByLabel('New customer’s name')).toHaveValue('Ilsa Brandt')
  await phone.fill('+1 212 555 0123')
  await book.hold.click()
  await expect(desk.getByText('Held for IB 1, Ilsa Brandt')).toBeVisible()
  await desk.getByRole('button', { name: 'Release it', exact: true }).click()
  await expect(book.hold).toBeVisible()
})

test('of two coatings for the paint one can be chosen, and the other says why not', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/book')
  const book = new Book(desk)
  await book.treatment('One layer').check()
  await expect(book.treatment('Two layers')).toBeDisabled()
  await expect(book.treatment('Two layers')).toHaveAccessibleDescription(
    /One layer \(Ovrel One\) and Two layers \(Ovrel Two\) both coat the paint/,
  )
  await expect(book.treatment('Wheels coated')).toBeEnabled()
  await book.treatment('One layer').uncheck()
  await expect(book.treatment('Two layers')).toBeEnabled()
})

test('an offer says which of the two rules its pick-up follows: dry, or under a cover somebody answers for', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/book')
  const book = new Book(desk)
  const offers = desk.getByRole('group', { name: 'Offers' })
  await book.treatment('Wash and decontaminate').check()
  await expect(book.offers.first()).toBeVisible()
  await expect(offers.getByText('until it may get wet')).toHaveCount(0)
  await book.treatment('One layer').check()
  await expect(offers.getByText('Stays until it may get wet').first()).toBeVisible()
  const dry = await book.offer(/Soonest home/).getAttribute('aria-label')
  await desk.getByRole('checkbox', { name: 'Leaves under cover' }).check()
  await desk.getByLabel('Covered transport and storage confirmed by').fill('Ines Vale')
  await expect(offers.getByText('Leaves under cover').first()).toBeVisible()
  await expect(offers.getByText('Stays until it may get wet')).toHaveCount(0)
  // Its keep-dry time is 24 h and its handover figure 12 h, so it goes home sooner.
  await expect(book.offer(/Soonest home/)).not.toHaveAttribute('aria-label', dry ?? '')
})

test('a place under cover is asked for with the offers, which are those on which one is free', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/book')
  const book = new Book(desk)
  await book.treatment('Wash and decontaminate').check()
  await expect(book.offers.first()).toBeVisible()
  const told = desk.getByText('With covered place from drop-off to handover')
  await expect(told).toHaveCount(0)
  await desk.getByRole('checkbox', { name: 'Place under cover' }).check()
  await expect(told).toBeAttached()
  await desk.getByRole('checkbox', { name: 'Place under cover' }).uncheck()
  await expect(told).toHaveCount(0)
})

test('a front end takes its part of the time, and the offer says of what, and that it is common practice', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/book')
  const book = new Book(desk)
  await book.treatment('Two-step correction').check()
  const hours = desk.getByText(/hands-on/)
  await expect(hours).toBeVisible()
  const whole = await hours.textContent()
  await desk.getByText('Front end', { exact: true }).click()
  await expect(hours).not.toHaveText(whole ?? '')
  await expect(desk.getByText(/front end, 35 % of the paint \(common practice\)/)).toBeAttached()
})

test('the whole booking is done with the keyboard alone', async ({ desk, shop }) => {
  await shop.enter(desk, '/book')
  const keys = desk.keyboard
  await expect(desk.getByLabel('Find by name, phone or plate')).toBeFocused()
  const tabTo = async (name: RegExp) => {
    for (let presses = 0; presses < 60; presses++) {
      const label = await desk.evaluate(() => {
        const active = document.activeElement as HTMLInputElement | null
        return `${active?.getAttribute('aria-label') ?? ''} ${active?.labels?.[0]?.textContent ?? active?.textContent ?? ''}`
      })
      if (name.test(label)) return
      await keys.press('Tab')
    }
    throw new Error(`Tab never reached ${name}`)
  }
  await keys.type('Kay Underhill')
  await expect(desk.getByRole('button', { name: 'New customer “Kay Underhill”' })).toBeVisible()
  await expect(async () => {
    await keys.press('Enter')
    await expect(desk.getByLabel('New customer’s name')).toHaveValue('Kay Underhill', { timeout: 500 })
  }).toPass()
  await tabTo(/Plate/)
  await keys.type('KEY 1')
  await tabTo(/One layer/)
  await keys.press('Space')
  const book = new Book(desk)
  await expect(book.offers.first()).toBeChecked()
  await tabTo(/Soonest home/)
  await keys.press('ArrowDown')
  await expect(book.offers.nth(1)).toBeChecked()
  await expect(book.hold).toBeEnabled()
  await keys.press('Enter')
  await expect(book.confirm).toBeFocused()
  await keys.press('Enter')
  await expect(desk.getByText('Booked: KEY 1, Kay Underhill')).toBeVisible()
})

test('a caller is found and chosen by keys, and leaves nothing of their car to the next', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/book')
  await desk.getByLabel('Find by name, phone or plate').fill('Vale')
  const found = desk.getByRole('list', { name: 'Found customers' })
  await expect(found.getByText('(212) 555-0101')).toBeVisible()
  await desk.keyboard.press('Enter')
  const another = desk.getByRole('button', { name: 'Somebody else' })
  await expect(another).toBeFocused()
  await desk.keyboard.press('Enter')
  await desk.getByRole('button', { name: 'New customer' }).click()
  for (const label of ['New customer’s name', 'Plate', 'Make', 'Model', 'Colour'])
    await expect(desk.getByLabel(label, { exact: true })).toHaveValue('')
})

test('double clicks hold one place, take down one caller and book once', async ({ desk, shop }) => {
  await shop.enter(desk, '/book')
  const book = new Book(desk)
  await book.treatment('One layer').check()
  await book.newCaller({ name: 'Twyla Ashgrove', phone: '+1 212 555 0177', plate: 'TWY 177' })
  await book.offer(/Soonest home/).check()
  await book.hold.dblclick()
  await expect(desk.getByText('Held for TWY 177, Twyla Ashgrove')).toBeVisible()
  await expect(book.treatment('Two layers')).toBeDisabled()
  await book.confirm.dblclick()
  await expect(desk.getByText('Booked: TWY 177, Twyla Ashgrove')).toBeVisible()
  await expect(desk.getByText('Not done')).toBeHidden()
  await shop.enter(desk, '/customers')
  await desk.getByPlaceholder(/Any part of a name/).fill('Twyla')
  await expect(desk.getByRole('link', { name: 'Twyla Ashgrove' })).toHaveCount(1)
})

test('a call survives a look at the board, a reload and a crash, and a hold is found again', async ({
  desk,
  shop,
}) => {
  await shop.enter(desk, '/book')
  const book = new Book(desk)
  await book.treatment('One-step polish').check()
  await book.newCaller({ name: 'Orla Pike', phone: '+1 212 555 0166', plate: '' })
  await desk.getByLabel('Make', { exact: true }).fill('Tervane')
  await desk.getByLabel('Colour', { exact: true }).fill('sand')
  await desk.getByRole('link', { name: 'See the board' }).click()
  await expect(new Board(desk).stays.first()).toBeVisible()
  await desk.getByRole('link', { name: 'Book', exact: true }).click()
  await expect(desk.getByLabel('New customer’s name')).toHaveValue('Orla Pike')
  await desk.reload()
  await expect(desk.getByLabel('New customer’s name')).toHaveValue('Orla Pike')
  await shop.kill()
  await shop.restart()
  await shop.enter(desk, '/book')
  await expect(desk.getByLabel('Colour', { exact: true })).toHaveValue('sand')
  await expect(book.treatment('One-step polish')).toBeChecked()
  // Without a plate: the car is called by its colour and make.
  await book.hold.click()
  await expect(desk.getByText('Held for sand Tervane, Orla Pike')).toBeVisible()
  await desk.reload()
  await book.confirm.click()
  await expect(desk.getByText('Booked: sand Tervane, Orla Pike')).toBeVisible()
})

test('who looks like somebody on file is shown before a second one is made', async ({ desk, shop }) => {
  await shop.enter(desk, '/book')
  await new Book(desk).newCaller({ name: 'Somebody', phone: '(212) 555-0101', plate: '' })
  const known = desk.getByRole('list', { name: 'On file already' })
  await expect(known).toContainText('Ines Vale')
  await known.getByRole('button', { name: /KFS 204/ }).click()
  await expect(desk.getByLabel('New customer’s name')).toBeHidden()
  await expect(desk.getByText('Ines Vale', { exact: true })).toBeVisible()
})

test('at 1366 by 768 the answer and its act stand beside the question, and nothing but a column scrolls', async ({
  desk,
  shop,
}) => {
  await desk.setViewportSize({ width: 1366, height: 768 })
  await shop.enter(desk, '/book')
  const book = new Book(desk)
  await book.treatment('Two layers').check()
  await book.newCaller({ name: 'Ida Marsh', phone: '', plate: 'IDA 77' })
  await expect(book.hold).toBeInViewport({ ratio: 1 })
  await expect(book.offers.first()).toBeInViewport({ ratio: 1 })
  const scrolls = await desk.evaluate(() => document.documentElement.scrollHeight - window.innerHeight)
  expect(scrolls).toBeLessThanOrEqual(0)
})
