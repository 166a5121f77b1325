/** What every query of the app is asked in the tests and in the bench of many years. */
import { dateOf } from '../../main/domain/calendar/index.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { openFile } from '../../main/services/imports/opened.ts'
import { dueVisits } from '../../main/services/upkeep/dueVisits.ts'
import { yearsNowAt } from '../bench/years/fillYears.ts'
import { typeOf } from './inputOf.ts'
import { procedures } from './procedures.ts'

/** Every query of the app. */
export function queryPaths(): string[] {
  return Object.entries(procedures)
    .filter(([, procedure]) => typeOf(procedure) === 'query')
    .map(([path]) => path)
}

/** Nothing is sent with it. */
const none = undefined

/** What each query is asked in a generated shop: about rows that are there. */
export async function queryInputs(desk: Desk): Promise<Record<string, unknown>> {
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
  const { id: invoiceId } = await tx.invoice.findFirstOrThrow({ where: { jobId } })
  const { id: quoteId } = await tx.quote.findFirstOrThrow({ where: { status: 'booked' } })
  const { id: waitingId } = await tx.waitingEntry.findFirstOrThrow({ where: { endedAt: null } })
  const base64 = Buffer.from('Name,Phone\nIda Marsh,\n').toString('base64')
  const { fileId } = await openFile(desk, { kind: 'customers', fileName: 'people.csv', base64 })
  const dueIn = { fromDate: day(0), toDate: day(364), limit: 5_000 }
  const [visit] = (await dueVisits(desk, dueIn)).visits
  return {
    'waiting.list': { freedJobId: coming.id },
    'waiting.freed': { freedJobId: jobId },
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
    'money.invoice': { id: invoiceId },
    'money.owed': none,
    'money.statement': { id: customerId },
    'money.papers': { text: 'inv' },
    'money.quotes': none,
    'money.quote': { id: quoteId },
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
    'shop.firstWeek': none,
    'shop.get': none,
    'shop.papers': none,
    'suppliers.list': {},
    'system.diagnostics': none,
    'system.now': none,
    'templates.list': none,
    'templates.preview': { templateId: 'reminder-email', vehicleId },
    'treatments.list': {},
    'upkeep.due': dueIn,
    'upkeep.visit': { planId: visit?.planId, ruleOn: visit?.ruleOn },
    'upkeep.year': none,
    'upkeep.spread.preview': none,
    'upkeep.car': { vehicleId },
    'upkeep.products': none,
  }
}
