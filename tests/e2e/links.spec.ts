import type { BrowserContext, Locator, Page } from '@playwright/test'
import { expect, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { remindersWritten } from './remindersWritten.ts'
import { addKeeper, setUpUpkeepShop } from './shops/upkeepShop.ts'
import { staysHere } from './staysHere.ts'

/** Clicks a document's link and gives back how it was answered. The page itself stays. */
async function opened(context: BrowserContext, desk: Page, link: Locator) {
  const here = desk.url()
  const address = new URL((await link.getAttribute('href'))!, here).href
  // What a viewer asks for again to show it is none of the link's doing.
  const answered = context.waitForEvent(
    'response',
    each => each.url() === address && each.request().resourceType() === 'document',
  )
  await link.click()
  const answer = await answered
  expect(desk.url()).toBe(here)
  const { 'content-type': type, 'content-disposition': shown } = answer.headers()
  return { status: answer.status(), type, shown: shown?.split(';')[0] }
}

const pdf = { status: 200, type: 'application/pdf', shown: 'inline' }

test.describe('in the shop of the demo', () => {
  test.use({ shopDemo: true })

  test('an order, a label and a data sheet open beside the page', async ({ desk, shop, context }) => {
    await shop.enter(desk, '/shelf/orders')
    await desk.getByRole('main').getByRole('list').getByRole('link').first().click()
    expect(await opened(context, desk, desk.getByRole('link', { name: /^Order \d+ as PDF$/ }))).toEqual(pdf)

    await shop.enter(desk, '/shelf/product/demo-ovrel-one')
    const label = desk.getByRole('link', { name: /^Label for a decanted bottle/ }).first()
    expect(await opened(context, desk, label)).toEqual(pdf)

    const { version } = await pageApi(desk).safety.get.query({ productId: 'demo-ovrel-one' })
    await pageApi(desk).safety.uploadSheet.mutate({
      productId: 'demo-ovrel-one',
      version,
      fileName: 'Ovrel One.pdf',
      revisedOn: '2026-01-12',
      base64: Buffer.from('%PDF-1.7\nstartxref\n9\n%%EOF\n').toString('base64'),
    })
    await shop.enter(desk, '/shelf/product/demo-ovrel-one')
    await desk.getByRole('tab', { name: 'Safety' }).click()
    const sheet = desk.getByRole('link', { name: 'Ovrel One.pdf' })
    expect(await opened(context, desk, sheet)).toEqual(pdf)
  })
})

test.describe('in a shop with owners to reach', () => {
  // Tuesday 14 April 2026, 09:30 on the shop's clock: within the hours at which owners may be called.
  test.use({ shopNow: '2026-04-14T08:30:00Z' })

  test('a number is called and a letter opens, and the list stays', async ({ desk, shop, context }) => {
    const api = pageApi(desk)
    const { topperId } = await setUpUpkeepShop(api)
    const keeper = { phone: '+1 202 555 0118', email: 'elke@example.com', laidOn: '2025-10-20', days: 182 }
    await addKeeper(api, topperId, { ...keeper, name: 'Elke Strand', plate: 'QHV 318', agrees: ['call'] })
    const { customerId } = await addKeeper(api, topperId, {
      ...keeper,
      name: 'Bryn Okafor',
      plate: 'QHV 319',
      phone: '+1 202 555 0119',
      agrees: [],
    })
    await api.consents.saveReach.mutate({
      customerId,
      language: null,
      zone: null,
      postal: '7 Kiln Lane\nQuillhaven',
      version: 0,
    })
    await api.consents.give.mutate({
      customerId,
      channel: 'letter',
      source: 'intake form',
      wording: 'Please remind me when the topper is due.',
    })
    await remindersWritten(api)
    await api.reminders.approveAll.mutate()

    await shop.enter(desk, '/upkeep/calls')
    const call = desk
      .getByRole('region', { name: 'Call Elke Strand' })
      .getByRole('link', { name: /555.?0118/ })
    // RFC 3966: a global number begins with + and has its country's code.
    await expect(call).toHaveAttribute('href', 'tel:+12025550118')
    await staysHere(desk, call)
    const letter = desk.getByRole('link', { name: 'Print the letter to Bryn Okafor' })
    expect(await opened(context, desk, letter)).toEqual(pdf)
  })
})
