import { beforeEach, expect, test } from 'vitest'
import { offers } from '../../../main/services/booking/offers.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { getBill } from '../../../main/services/money/bill.ts'
import type { QuoteInput } from '../../../main/services/money/inputs.ts'
import { quoteFile } from '../../../main/services/money/paperFiles.ts'
import {
  acceptQuote,
  bookQuote,
  declineQuote,
  getQuote,
  listQuotes,
  makeQuote,
} from '../../../main/services/money/quotes.ts'
import { getUpkeepSettings, saveUpkeepSettings } from '../../../main/services/upkeep/settings.ts'
import { readPdf } from '../../documents/readPdf.ts'
import { type MoneyShop, moneyShop, setRules } from './sample.ts'

/** One white pixel. */
const signature =
  'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mP8/x8AAwMCAO+ip1sAAAAASUVORK5CYII='

let made: MoneyShop
let input: QuoteInput

beforeEach(async () => {
  made = await moneyShop()
  const { treatments, vehicles } = made.shop
  input = {
    vehicleId: vehicles[0]!,
    condition: 'good',
    scope: 'whole',
    note: 'As agreed on the phone',
    variants: [
      { name: 'Good', treatmentIds: [treatments.wash] },
      { name: 'Better', treatmentIds: [treatments.topped] },
      { name: 'Best', treatmentIds: [treatments.correction, treatments.twoLayers] },
    ],
  }
})

test('Three ways side by side, each with its price, what it gives and what follows', async () => {
  const { id } = await makeQuote(made.desk, input)
  const quote = await getQuote(made.desk, { id })
  expect(quote).toMatchObject({ number: 1, status: 'open', over: false, validUntil: '2026-05-15' })
  const [good, better, best] = quote.variants
  expect(good).toMatchObject({ priceMinor: 12_000, lasts: [], upkeepVisits: 0, daysAway: 1 })
  // A topper of 182 days: six renewals in three years, three inspections, a first wash and a check-up.
  expect(better).toMatchObject({ priceMinor: 99_900, upkeepVisits: 11 })
  // Nothing sold lays a topper alone, so nobody can say what its renewals cost.
  expect(better!.upkeepMinor).toBeNull()
  expect(better!.lasts.map(each => [each.name, each.days])).toEqual([
    ['Ovrel Two', 365],
    ['Ovrel Veil', 182],
  ])
  // The wash of both is charged once.
  expect(best!.priceMinor).toBe(168_300)
  const asked = await offers(made.desk, {
    sizeClass: 'medium',
    condition: 'good',
    treatmentIds: input.variants[1]!.treatmentIds,
  })
  expect(asked.soonest).toMatchObject({ dropOffAt: better!.dropOffAt, handoverAt: better!.handoverAt })
  expect(await listQuotes(made.desk)).toMatchObject([{ number: 1, fromMinor: 12_000, over: false }])
})

test('The upkeep of three years is each visit at the price of what it is booked as', async () => {
  const { desk, shop } = made
  const rules = await getUpkeepSettings(desk)
  const treatments = { ...rules.treatments, topper: shop.treatments.wash }
  await saveUpkeepSettings(desk, { ...rules, treatments })
  const { id } = await makeQuote(desk, input)
  // Eleven visits, each a wash of 120.00.
  expect((await getQuote(desk, { id })).variants[1]).toMatchObject({
    upkeepVisits: 11,
    upkeepMinor: 11 * 12_000,
  })
})

test('Each way has its own extras and a discount with its reason, and its price follows the condition', async () => {
  await setRules(made.desk, {
    extras: [{ key: 'kit', name: 'Care kit', priceMinor: 4_500, taxKey: '' }],
    heavyPercent: '50',
  })
  const { treatments } = made.shop
  const discount = { treatmentId: null, amountMinor: null, percent: '10', reason: 'Second car' }
  const variants = [
    { name: 'Good', treatmentIds: [treatments.wash] },
    {
      name: 'Better',
      treatmentIds: [treatments.wash],
      extras: [{ key: 'kit', quantity: '1' }],
      discounts: [discount],
    },
    { name: 'Best', treatmentIds: [treatments.correction] },
  ]
  const { id } = await makeQuote(made.desk, { ...input, condition: 'heavy', variants })
  const [good, better, best] = (await getQuote(made.desk, { id })).variants
  // 120.00 for the wash, 45.00 for the kit, a tenth off both.
  expect([good!.priceMinor, better!.priceMinor]).toEqual([12_000, 14_850])
  expect(better!.charges.map(({ kind, words }) => [kind, words])).toEqual([
    ['extra', 'Care kit'],
    ['discount', 'Second car'],
  ])
  const plain = await makeQuote(made.desk, { ...input, variants })
  const before = (await getQuote(made.desk, { id: plain.id })).variants[2]!
  expect(best!.priceMinor).toBe(Math.round(before.priceMinor * 1.5))
  const { pages } = await readPdf((await quoteFile(made.desk, { id })).bytes)
  expect(pages.flatMap(page => page.lines).join('\n')).toMatch(/Tax comes on top of these prices\./)
  expect(pages.flatMap(page => page.lines).join('\n')).toMatch(/Care kit\s+45\.00\nSecond car\s+-16\.50/)
  const unexplained = [variants[0]!, { ...variants[1]!, discounts: [{ ...discount, reason: ' ' }] }]
  await expect(makeQuote(made.desk, { ...input, variants: unexplained })).rejects.toMatchObject({
    code: 'discount-unexplained',
    field: 'variants.1.discounts.0.reason',
  })
})

test('Signed, it becomes the booking at the price that was signed, whatever the shop asks by then', async () => {
  const { desk } = made
  const { id } = await makeQuote(desk, input)
  const accept = { id, version: 1, position: 2, name: 'Ines Vale', signature }
  await expect(acceptQuote(desk, { ...accept, signature: '' })).rejects.toMatchObject({ field: 'signature' })
  await expect(acceptQuote(desk, { ...accept, name: ' ' })).rejects.toMatchObject({ field: 'name' })
  const { version } = await acceptQuote(desk, accept)
  await expect(acceptQuote(desk, accept)).rejects.toMatchObject({ code: 'stale' })
  await setRules(desk, { sharedOnce: false })
  const asked = await offers(desk, {
    sizeClass: 'medium',
    condition: 'good',
    treatmentIds: input.variants[2]!.treatmentIds,
  })
  expect(asked.priceMinor).toBe(177_900)
  if (!asked.soonest.feasible) throw new Error('no place')
  const { jobId } = await bookQuote(desk, { id, version, plan: asked.soonest.plan })
  expect(await getJob(desk, { id: jobId })).toMatchObject({ status: 'booked', priceMinor: 168_300 })
  expect(await getBill(desk, { id: jobId })).toMatchObject({ withoutTaxMinor: 168_300, depositMinor: 16_830 })
  expect(await getQuote(desk, { id })).toMatchObject({ status: 'booked', jobId, signedName: 'Ines Vale' })
  const words = (await readPdf((await quoteFile(desk, { id })).bytes)).pages
    .flatMap(page => page.lines)
    .join('\n')
  for (const fact of [/Best, chosen/, /Together\s+1,683\.00/, /As agreed on the phone/, /Ines Vale, /])
    expect(words).toMatch(fact)
})

test('An owner with no hand for it confirms with the typed name, and the paper says so', async () => {
  const { desk } = made
  const { id } = await makeQuote(desk, input)
  const accept = { id, version: 1, position: 0, name: 'Ines Vale' }
  await expect(acceptQuote(desk, { ...accept, signature: 'anything' })).rejects.toMatchObject({
    code: 'signature-missing',
  })
  await acceptQuote(desk, { ...accept, signature: 'typed' })
  expect(await getQuote(desk, { id })).toMatchObject({ status: 'accepted', signature: 'typed' })
  const { pages } = await readPdf((await quoteFile(desk, { id })).bytes)
  expect(pages.flatMap(page => page.lines).join('\n')).toContain('Confirmed with the typed name: Ines Vale, ')
})

test('Of two windows each makes its own quote, and one of them books it', async () => {
  const { desk } = made
  const both = await Promise.all([makeQuote(desk, input), makeQuote(desk, input)])
  expect(both.map(each => each.number).sort()).toEqual([1, 2])
  const { id } = both[0]!
  const accept = { id, version: 1, position: 0, name: 'Ines Vale', signature }
  const signed = await Promise.allSettled([acceptQuote(desk, accept), acceptQuote(desk, accept)])
  expect(signed.map(each => each.status)).toEqual(['fulfilled', 'rejected'])
  const { version, sizeClass, condition, variants } = await getQuote(desk, { id })
  const treatmentIds = variants[0]!.treatments.map(each => each.id)
  const { soonest } = await offers(desk, { sizeClass: sizeClass as 'medium', condition, treatmentIds })
  if (!soonest.feasible) throw new Error('no place')
  const book = { id, version, plan: soonest.plan }
  const booked = await Promise.allSettled([bookQuote(desk, book), bookQuote(desk, book)])
  expect(booked.map(each => each.status)).toEqual(['fulfilled', 'rejected'])
  expect(await desk.store.read.job.count()).toBe(1)
  // A list of quotes carries no signatures: each is a picture.
  expect(JSON.stringify(await listQuotes(desk))).not.toContain('base64')
})

test('One that has run out, was declined or is not signed goes no further', async () => {
  const { desk } = made
  const { id } = await makeQuote(desk, input)
  await expect(bookQuote(desk, { id, version: 1, plan: { steps: [], handover: 0 } })).rejects.toMatchObject({
    code: 'not-signed',
  })
  const accept = { id, version: 1, position: 0, name: 'Ines Vale', signature }
  await expect(acceptQuote(desk, { ...accept, position: 3 })).rejects.toMatchObject({ code: 'missing' })
  desk.setNow('2026-05-16T12:00:00Z')
  expect(await getQuote(desk, { id })).toMatchObject({ over: true })
  await expect(acceptQuote(desk, accept)).rejects.toMatchObject({ code: 'quote-over' })
  const { version } = await declineQuote(desk, { id, version: 1 })
  await expect(acceptQuote(desk, { ...accept, version })).rejects.toMatchObject({ code: 'not-open' })
  await expect(declineQuote(desk, { id, version })).rejects.toMatchObject({ code: 'not-open' })
})

test('A variant without a name or for a car put away is refused', async () => {
  const variants = [{ ...input.variants[0]!, name: '' }]
  await expect(makeQuote(made.desk, { ...input, variants })).rejects.toMatchObject({
    field: 'variants.0.name',
  })
  await expect(makeQuote(made.desk, { ...input, vehicleId: 'gone' })).rejects.toMatchObject({
    code: 'missing',
  })
})
