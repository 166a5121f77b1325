import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { createApp } from '../../main/api/app.ts'
import { appRouter } from '../../main/api/router.ts'
import { dateOf } from '../../main/domain/calendar/index.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { openFile } from '../../main/services/imports/opened.ts'
import { getBill } from '../../main/services/money/bill.ts'
import { issueInvoice } from '../../main/services/money/issue.ts'
import { makeQuote } from '../../main/services/money/quotes.ts'
import { addWaiting } from '../../main/services/waiting/entries.ts'
import { yearsNowAt } from '../bench/years/fillYears.ts'
import { typeOf } from './inputOf.ts'
import { yearsShop } from './yearsShop.ts'

it('answers every query of a shop of a year', async () => {
  const { dir, desk } = await yearsShop()
  const rendererDir = join(dir, 'page')
  mkdirSync(rendererDir)
  const app = createApp({ desk, rendererDir })
  const ask = async (path: string, input: unknown) => {
    const tail = input === undefined ? '' : `?input=${encodeURIComponent(JSON.stringify(input))}`
    const answer = await app.request(`/trpc/${path}${tail}`)
    return { status: answer.status, text: await answer.text() }
  }
  const inputs = await inputsOf(desk)
  const due = await ask('upkeep.due', inputs['upkeep.due'])
  const [visit] = (
    JSON.parse(due.text) as { result: { data: { visits: { planId: string; ruleOn: string }[] } } }
  ).result.data.visits
  inputs['upkeep.visit'] = { planId: visit?.planId, ruleOn: visit?.ruleOn }
  const queries = Object.entries(appRouter._def.procedures)
    .filter(([, procedure]) => typeOf(procedure) === 'query')
    .map(([path]) => path)
  expect(
    queries.filter(path => !Object.hasOwn(inputs, path)),
    'give these an input below',
  ).toEqual([])
  const faults: string[] = []
  for (const path of queries) {
    const { status, text } = await ask(path, inputs[path])
    if (status !== 200) faults.push(`${path}: ${status} ${text}`)
  }
  expect(faults).toEqual([])
}, 300_000)

/** Nothing is sent with it. */
const none = undefined

/** What a generated shop has none of: an invoice, a quote, a file that is open. */
async function papersOf(desk: Desk, { jobId, vehicleId, treatmentId }: Record<string, string>) {
  const { version } = await getBill(desk, { id: jobId! })
  const buyer = { name: 'Ines Vale', address: '', country: 'US', email: '', taxNumber: '' }
  const invoice = await issueInvoice(desk, { id: jobId!, version, buyer, note: '' })
  const quote = await makeQuote(desk, {
    vehicleId: vehicleId!,
    condition: 'good',
    scope: 'whole',
    note: '',
    variants: [{ name: 'One way', treatmentIds: [treatmentId!] }],
  })
  const base64 = Buffer.from('Name,Phone\nIda Marsh,\n').toString('base64')
  const { fileId } = await openFile(desk, { kind: 'customers', fileName: 'people.csv', base64 })
  return { invoice: { id: invoice.id }, quote: { id: quote.id }, fileId }
}

async function inputsOf(desk: Desk): Promise<Record<string, unknown>> {
  const tx = desk.store.read
  const { zone } = await tx.shop.findFirstOrThrow()
  const day = (days: number) => dateOf(yearsNowAt + days * 1440, zone)
  const job = await tx.job.findFirstOrThrow({
    where: { status: 'handedOver' },
    orderBy: { dropOffAt: 'asc' },
  })
  const coming = await tx.job.findFirstOrThrow({
    where: { status: 'booked' },
    include: { steps: { orderBy: { position: 'asc' }, take: 1 } },
  })
  const { id: productId } = await tx.product.findFirstOrThrow({ where: { kind: 'coating' } })
  const { id: bayId } = await tx.bay.findFirstOrThrow({ where: { archivedAt: null } })
  const order = await tx.purchaseOrder.findFirstOrThrow({ where: { status: 'sent' } })
  const { code } = await tx.productCode.findFirstOrThrow()
  const { id: treatmentId } = await tx.treatment.findFirstOrThrow()
  const { vehicleId, customerId, id: jobId } = job
  const [step] = coming.steps
  const { invoice, quote, fileId } = await papersOf(desk, { jobId, vehicleId, treatmentId })
  const { id: waitingId } = await addWaiting(desk, {
    vehicleId,
    treatmentIds: [treatmentId],
    condition: 'good',
    scope: 'whole',
    fromOn: day(0),
    toOn: day(20),
    weekdays: [],
    note: '',
  })
  return {
    'waiting.list': { freedJobId: coming.id },
    'waiting.words': { id: waitingId },
    'backups.standing': none,
    'backups.settings': none,
    'backups.list': none,
    'bays.list': {},
    'board.range': { fromDate: day(-200), days: 7 },
    'board.tryMove': {
      jobId: coming.id,
      version: coming.version,
      position: 0,
      bayId: step?.bayId,
      startAt: step?.startAt,
    },
    'booking.held': none,
    'jobs.told': { id: coming.id },
    'booking.changeOffers': { id: coming.id, askedDate: day(3) },
    'booking.offers': {
      sizeClass: 'medium',
      condition: 'good',
      treatmentIds: [treatmentId],
      askedDate: day(2),
    },
    'consents.list': { customerId },
    'crew.list': {},
    'cure.job': { id: jobId },
    'applied.get': { jobId },
    'customers.find': { text: 'ashby' },
    'customers.get': { id: customerId },
    'customers.alike': { name: 'Ida Marsh', phone: '', email: '', plate: '', vin: '' },
    'dayPlan.relay': { days: 7 },
    'mend.amiss': none,
    'dayPlan.bayUse': { weeks: 12 },
    'dayPlan.whatIf.stands': none,
    'dayPlan.whatIf.curing': none,
    'effort.get': none,
    'intake.measuring': none,
    'intake.meters': none,
    'feeds.list': none,
    'history.list': { entities: ['job'], entityId: jobId },
    'history.choices': none,
    'hours.exceptions': none,
    'imports.settle': {
      fileId,
      reading: { columns: { name: 0, phone: 1 }, dayOrder: null, mark: null, volume: null },
    },
    'imports.standing': none,
    'imports.taken': none,
    'intake.get': { jobId },
    'jobs.get': { id: jobId },
    'jobs.ownerWords': { id: jobId },
    'jobs.find': { text: String(job.number) },
    'leaving.standing': none,
    'lendables.list': {},
    'mail.get': none,
    'money.rules': none,
    'money.bill': { id: jobId },
    'money.invoice': invoice,
    'money.owed': none,
    'money.statement': { id: customerId },
    'money.papers': { text: 'inv' },
    'money.quotes': none,
    'money.quote': quote,
    'money.earns': none,
    'money.takings': { date: day(0) },
    'morning.sheet': { date: day(0) },
    'orders.list': none,
    'orders.get': { id: order.id },
    'orders.message': { id: order.id, kind: 'chase' },
    'products.list': {},
    'readings.now': none,
    'readings.list': { bayId, fromAt: yearsNowAt - 300 * 1440, toAt: yearsNowAt },
    'reminders.batch': none,
    'reminders.callList': none,
    'reminders.letters': none,
    'reminders.settings': none,
    'results.summary': {},
    'safety.get': { productId },
    'safety.warnings': none,
    'safety.waste': none,
    'shelf.list': none,
    'shelf.product': { id: productId },
    'shelf.ledger': { productId },
    'shelf.value': none,
    'shelf.jobCost': { jobId },
    'shelf.closeOfDay': {},
    'shelf.scan': { code },
    'shelf.recipes': { treatmentId },
    'shelf.rules': none,
    'shop.get': none,
    'shop.papers': none,
    'suppliers.list': {},
    'system.diagnostics': none,
    'system.now': none,
    'templates.list': none,
    'templates.preview': { templateId: 'reminder-email', vehicleId },
    'treatments.list': {},
    'upkeep.due': { fromDate: day(0), toDate: day(364), limit: 5_000 },
    'upkeep.year': none,
    'upkeep.spread.preview': none,
    'upkeep.car': { vehicleId },
    'upkeep.products': none,
  }
}
