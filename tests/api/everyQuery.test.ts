import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { createApp } from '../../main/api/app.ts'
import { appRouter } from '../../main/api/router.ts'
import { dateOf } from '../../main/domain/calendar/index.ts'
import type { Tx } from '../../main/store/store.ts'
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
  const inputs = await inputsOf(desk.store.read)
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

async function inputsOf(tx: Tx): Promise<Record<string, unknown>> {
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
  return {
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
    'dayPlan.relay': { days: 7 },
    'dayPlan.bayUse': { weeks: 12 },
    'dayPlan.whatIf.stands': none,
    'dayPlan.whatIf.curing': none,
    'feeds.list': none,
    'history.list': { entities: ['job'], entityId: jobId },
    'history.choices': none,
    'hours.exceptions': none,
    'jobs.get': { id: jobId },
    'jobs.ownerWords': { id: jobId },
    'jobs.find': { text: String(job.number) },
    'leaving.standing': none,
    'mail.get': none,
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
