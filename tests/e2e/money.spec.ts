import type { Page } from '@playwright/test'
import { momentWords, weekdayDate } from '../../main/domain/calendar/index.ts'
import { pdfWords } from '../documents/poppler.ts'
import { expect, expectAccessible, test } from './fixtures.ts'
import { type PageApi, pageApi } from './pageApi.ts'
import { Money } from './pages/Money.ts'

// 10:40 on a Wednesday in the demo shop.
test.use({ shopNow: '2026-04-15T14:40:00Z', shopDemo: true })

const vehicleId = 'demo-vehicle-39'

/** A document as the page may open it. */
async function documentOf(desk: Page, link: string | RegExp): Promise<Buffer> {
  const href = await desk.getByRole('link', { name: link }).first().getAttribute('href')
  const answer = await desk.request.get(new URL(href!, desk.url()).href)
  expect(answer.status()).toBe(200)
  return answer.body()
}

/** The car comes now and every step of it is done, one after the other. */
async function workAll(api: PageApi, id: string): Promise<void> {
  const job = () => api.jobs.get.query({ id })
  await api.jobs.arrive.mutate({ id, version: (await job()).version })
  for (const { position, kind } of (await job()).steps) {
    if (kind === 'hold') continue
    const reason = 'Tried in the browser'
    await api.jobs.startStep.mutate({ id, version: (await job()).version, position, reason, accepted: true })
    await api.jobs.finishStep.mutate({ id, version: (await job()).version, position })
  }
}

/**
 * When the coats of a job are dry, washable and hard after it has left, reckoned here from the clock's own points. At 20 °C,
 * where the figures hold, cure goes on minute for minute; between two points of the clock it goes on evenly.
 */
async function timesByClock(api: PageApi, id: string) {
  const { leftAt, handoverAt, steps } = await api.jobs.get.query({ id })
  const leavesAt = leftAt ?? handoverAt
  const products = await api.products.list.query({ archived: false })
  const coats = steps.flatMap(({ cure, productId }) => {
    const profile = products.find(each => each.id === productId)?.cureProfile
    if (!cure?.clock || !profile) return []
    const { ages } = cure.clock
    const i = Math.max(
      1,
      ages.findIndex(([at]) => at >= leavesAt),
    )
    const [[a, from], [b, to]] = [ages[i - 1]!, ages[i]!]
    return [{ profile, age: from + ((to - from) * (leavesAt - a)) / (b - a) }]
  })
  expect(coats.length).toBeGreaterThan(0)
  const latest = (need: (profile: (typeof coats)[number]['profile']) => number) =>
    Math.max(leavesAt, ...coats.map(({ profile, age }) => Math.ceil(leavesAt + need(profile) - age)))
  return {
    leavesAt,
    dryAt: latest(profile => profile.keepDryMin),
    washAt: latest(profile => profile.firstWashMin),
    fullAt: latest(profile => profile.fullCure.lateMin),
  }
}

test('a quote of three ways is signed, booked, worked, invoiced, paid in two parts, and proven for good', async ({
  desk,
  shop,
}) => {
  const money = new Money(desk)
  const api = pageApi(desk)
  await shop.enter(desk, `/money/newQuote/${vehicleId}`)
  for (const [i, treatments] of [['One-step polish'], ['One layer'], ['Two layers']].entries()) {
    if (i > 0) await money.quoteForm.getByRole('button', { name: 'Add a variant' }).click()
    await money.sell(i + 1, treatments)
  }
  await desk.getByRole('button', { name: 'Extras and discount of variant 2' }).click()
  await desk.getByLabel('Care kit').check({ force: true })
  await desk.getByLabel('Discount, percent').fill('10')
  await desk.keyboard.press('Escape')
  await expectAccessible(desk)
  // A discount without its reason is refused at its variant, and nothing typed is lost.
  await money.quoteForm.getByRole('button', { name: 'Work it out' }).click()
  await expect(desk.getByText('Say why it is taken off; a word will do.').first()).toBeVisible()
  await desk.getByRole('button', { name: 'Extras and discount of variant 2' }).click()
  await desk.getByLabel('Why', { exact: true }).fill('Second car')
  await desk.keyboard.press('Escape')
  await money.quoteForm.getByRole('button', { name: 'Work it out' }).click()

  // Side by side: a price, how long it lasts, how long the car is away, its upkeep over three years.
  for (const name of ['Good', 'Better', 'Best']) await expect(money.variant(name)).toContainText(/Away/)
  await expect(money.variant('Better')).toContainText('Care kit')
  await expect(money.variant('Better')).toContainText(/Second car: -/)
  await expect(money.variant('Best')).toContainText(/Lasts.*Upkeep, 3 years/)
  const priceOf = async () => (await money.variant('Better').locator('b').first().textContent())!
  const signedPrice = await priceOf()
  await expectAccessible(desk)
  await money.variant('Better').getByRole('button', { name: 'Choose Better' }).click()
  await money.sign()
  await desk
    .getByRole('button', { name: /^Book / })
    .first()
    .click()
  await desk.getByRole('link', { name: 'To its booking' }).click()
  await expect(desk.getByText(/booked/i).first()).toBeVisible()
  const id = new URL(desk.url()).pathname.split('/').at(-1)!

  // A deposit before the work, at the price that was signed.
  await shop.enter(desk, `/money/bill/${id}`)
  await expect(desk.getByText(signedPrice).first()).toBeVisible()
  await money.pay('50')
  await workAll(api, id)
  await api.jobs.outside.mutate({ id, version: (await api.jobs.get.query({ id })).version, outsideC: 20 })

  // Seven hours on it goes home, before it may get wet.
  await shop.restart('2026-04-15T21:40:00Z')
  await shop.enter(desk, `/jobs/${id}`)
  const after = pageApi(desk)
  const { version } = await after.jobs.get.query({ id })
  await after.jobs.handOver.mutate({ id, version, reason: 'Tried in the browser' })
  const { draft, version: at } = await after.applied.get.query({ jobId: id })
  const layers = draft.layers.map(layer => ({ ...layer, lot: 'batch 7K-114' }))
  await after.applied.sign.mutate({ jobId: id, version: at, draft: { ...draft, layers }, signedBy: 'Imre' })

  // Every date of the care sheet is the clock's, and the topper's is the plan's.
  await desk.reload()
  const { zone, vehicle } = await after.jobs.get.query({ id })
  const care = pdfWords(await documentOf(desk, 'Care sheet'))
  const left = await timesByClock(after, id)
  expect(left.dryAt).toBeGreaterThan(left.leavesAt)
  expect(care).toContain(`Keep it dry until ${momentWords(left.dryAt, zone)}`)
  expect(care).toContain(`No wash before ${momentWords(left.washAt, zone)}`)
  expect(care).toContain(`Fully cured on ${momentWords(left.fullAt, zone)}`)
  const { plans } = await after.upkeep.car.query({ vehicleId: vehicle.id })
  const toppers = plans.filter(({ title, next }) => /topper|protection/i.test(title) && next !== null)
  expect(toppers).toHaveLength(1)
  expect(care).toContain(`${toppers[0]!.title} ${weekdayDate(toppers[0]!.next!.dueOn)}`)

  // Invoiced with the deposit taken over, and paid in two parts.
  await shop.enter(desk, `/money/bill/${id}`)
  await desk
    .getByRole('form', { name: 'Invoice' })
    .getByRole('button', { name: /^Issue the invoice/ })
    .click()
  await expect(desk.getByRole('form', { name: 'Invoice' })).toHaveCount(0)
  await money.pay('100')
  await money.pay()
  const bill = await after.money.bill.query({ id })
  expect(bill).toMatchObject({ owedMinor: 0, toPayMinor: 0 })
  expect(bill.payments.map(({ before, amountMinor }) => [before, amountMinor])).toEqual([
    [true, 5_000],
    [false, 10_000],
    [false, bill.billedMinor - 15_000],
  ])
  await shop.enter(desk, `/money/invoices/${bill.invoiceId}`)
  const invoice = pdfWords(await documentOf(desk, /as PDF/))
  expect(invoice).toMatch(/Deposit paid -50\.00/)
  expect(invoice).toMatch(/Care kit/)
  await expectAccessible(desk)

  // The certificate says yes as it is, and no with one digit changed.
  await shop.enter(desk, `/jobs/${id}/applied`)
  const file = await documentOf(desk, 'Certificate')
  await shop.enter(desk, '/verify')
  await desk.locator('input[type=file]').setInputFiles({
    name: 'certificate.pdf',
    mimeType: 'application/pdf',
    buffer: file,
  })
  await expect(desk.getByRole('status').filter({ hasText: 'Yes: the certificate' })).toBeVisible()
  const code = await desk.getByLabel('Its code').inputValue()
  await desk.getByLabel('Its code').fill(code.replace(/\.\d+-/, '.999-'))
  await desk.getByRole('button', { name: 'Check', exact: true }).click()
  await expect(desk.getByRole('status').filter({ hasText: 'No: the signature is not right' })).toBeVisible()
})
