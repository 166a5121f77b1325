/** What the screens ask that grows with the years, and how much processor time each may take. */
import { dateOf } from '../../../main/domain/calendar/index.ts'
import type { Tx } from '../../../main/store/store.ts'
import { yearsNowAt } from './fillYears.ts'

const zone = 'America/New_York'

/** Rows the questions are about: of the busiest car, a typical job and so on. */
export interface Ids {
  vehicleId: string
  customerId: string
  jobId: string
  bayId: string
  productId: string
  /** Whoever has the most cars. */
  fleetId: string
  /** Of the busiest customer: a whole word of their name, and of most names there are. */
  surname: string
}

export async function idsOf(tx: Tx): Promise<Ids> {
  const [car] = await tx.job.groupBy({
    by: ['vehicleId', 'customerId'],
    _count: true,
    orderBy: { _count: { id: 'desc' } },
    take: 1,
  })
  const job = await tx.job.findFirstOrThrow({
    where: { status: 'handedOver' },
    orderBy: { dropOffAt: 'desc' },
  })
  const [product] = await tx.stockMove.groupBy({
    by: ['productId'],
    orderBy: { _count: { seq: 'desc' } },
    take: 1,
  })
  const [fleet] = await tx.vehicle.groupBy({
    by: ['customerId'],
    orderBy: { _count: { id: 'desc' } },
    take: 1,
  })
  const owner = await tx.customer.findFirst({ where: { id: car?.customerId ?? '' } })
  return {
    fleetId: fleet?.customerId ?? '',
    surname: owner?.name.split(' ').at(-1) ?? '',
    vehicleId: car?.vehicleId ?? '',
    customerId: car?.customerId ?? '',
    jobId: job.id,
    bayId: 'demo-bay-3',
    productId: product?.productId ?? '',
  }
}

interface Question {
  name: string
  /** A procedure, or a path beginning with a slash. */
  path: string
  input?: unknown
  /** The act that begins the work beside the desk whose outcome is asked for. */
  begin?: string
  /** Something was saved just before, so that nothing is known from the last time it was asked. */
  afterSave?: true
  goalMs: number | null
}

const day = (days: number) => dateOf(yearsNowAt + days * 1440, zone)

export function screenQuestions(ids: Ids): Question[] {
  const { vehicleId, customerId, jobId, bayId, productId, fleetId, surname } = ids
  const wished = {
    sizeClass: 'medium',
    treatmentIds: ['demo-two-layers'],
    condition: 'good',
    askedDate: day(1),
  }
  return [
    { name: 'car page', path: 'upkeep.car', input: { vehicleId }, goalMs: 30 },
    { name: 'customer page', path: 'customers.get', input: { id: customerId }, goalMs: 30 },
    { name: 'job page', path: 'jobs.get', input: { id: jobId }, goalMs: 30 },
    { name: 'reminders batch', path: 'reminders.batch', goalMs: 300 },
    {
      name: 'upkeep due in 30 days',
      path: 'upkeep.due',
      input: { fromDate: day(0), toDate: day(30) },
      goalMs: 60,
    },
    {
      name: 'spread preview',
      path: 'upkeep.spread.preview',
      begin: 'upkeep.spread.begin',
      goalMs: 1_500,
    },
    { name: 'upkeep year', path: 'upkeep.year', goalMs: 60 },
    { name: 'calendar feed', path: '/documents/calendar.ics', goalMs: 200 },
    {
      name: 'results of reminders',
      path: 'results.summary',
      input: { fromAt: yearsNowAt - 365 * 1440 },
      goalMs: 60,
    },
    { name: 'results of reminders of all years', path: 'results.summary', goalMs: 60 },
    { name: 'shelf value', path: 'shelf.value', goalMs: 60 },
    { name: 'cost of one job', path: 'shelf.jobCost', input: { jobId }, goalMs: 10 },
    { name: 'one product', path: 'shelf.product', input: { id: productId }, goalMs: null },
    { name: 'close of day', path: 'shelf.closeOfDay', goalMs: 80 },
    { name: 'conditions now', path: 'readings.now', goalMs: 20 },
    {
      name: 'readings of a bay',
      path: 'readings.list',
      input: { bayId, fromAt: yearsNowAt - 7 * 1440, toAt: yearsNowAt },
      goalMs: null,
    },
    { name: 'board', path: 'board.range', input: { fromDate: day(0), days: 7 }, goalMs: 70 },
    { name: "an old week's board", path: 'board.range', input: { fromDate: day(-180), days: 7 }, goalMs: 70 },
    { name: 'day plan', path: 'dayPlan.relay', input: { days: 7 }, goalMs: 300 },
    { name: 'what earns', path: 'money.earns', goalMs: 300 },
    { name: 'who owes', path: 'money.owed', goalMs: 60 },
    { name: 'statement of a customer', path: 'money.statement', input: { id: customerId }, goalMs: 30 },
    { name: 'invoices, the newest', path: 'money.papers', input: { text: '' }, goalMs: 30 },
    { name: 'invoices of a name', path: 'money.papers', input: { text: surname }, goalMs: 100 },
    { name: 'quotes', path: 'money.quotes', goalMs: 60 },
    { name: "a day's takings", path: 'money.takings', input: { date: day(-30) }, goalMs: 30 },
    {
      name: 'journal of a month',
      path: `/documents/journal.csv?fromDate=${day(-60)}&toDate=${day(-30)}`,
      goalMs: 100,
    },
    { name: 'bill of a job', path: 'money.bill', input: { id: jobId }, goalMs: 30 },
    { name: 'use of the bays', path: 'dayPlan.bayUse', input: { weeks: 13 }, goalMs: 300 },
    { name: 'customers, the first page', path: 'customers.find', input: { text: '' }, goalMs: 20 },
    {
      name: 'customers, the tenth page',
      path: 'customers.find',
      input: { text: '', limit: 100, cursor: 900 },
      goalMs: 20,
    },
    { name: 'customers found by name', path: 'customers.find', input: { text: 'ashby' }, goalMs: 20 },
    { name: 'customer with forty cars', path: 'customers.get', input: { id: fleetId }, goalMs: 60 },
    {
      name: 'people alike while typing',
      path: 'customers.alike',
      input: { name: 'Ines Ashby', phone: '', email: '' },
      goalMs: 60,
    },
    { name: 'jobs found by plate', path: 'jobs.find', input: { text: 'abc 1' }, goalMs: 60 },
    { name: 'waiting list tried', path: 'waiting.list', input: {}, goalMs: 300 },
    ...(['job', 'customer', 'product'] as const).map(kind => ({
      name: `history of a ${kind}`,
      path: 'history.list',
      input: { entities: [kind], entityId: { job: jobId, customer: customerId, product: productId }[kind] },
      goalMs: 30,
    })),
    { name: 'history of the shop', path: 'history.list', input: {}, goalMs: 60 },
    { name: 'morning sheet', path: 'morning.sheet', input: { date: day(0) }, goalMs: 70 },
    { name: 'intake of a job', path: 'intake.get', input: { jobId }, goalMs: 30 },
    { name: 'gloss meters', path: 'intake.meters', goalMs: 60 },
    { name: 'hands-on times', path: 'effort.get', goalMs: 120 },
    { name: 'offers', path: 'booking.offers', input: wished, goalMs: 25 },
    {
      name: 'offers right after a save',
      path: 'booking.offers',
      input: wished,
      afterSave: true,
      goalMs: null,
    },
  ]
}
