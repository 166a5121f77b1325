/** What the visits of the last twelve months earned. */
import { setImmediate as nextTurn } from 'node:timers/promises'
import { dateOf, openMinutesBetween, openSpans } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { type EarnedVisit, earnings, sumMinor } from '../../domain/money/index.ts'
import { jobUses } from '../../store/costRows.ts'
import { type EarnedRow, earnedRows } from '../../store/earnedRows.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { calendarOf, type ShopView, shopOf } from '../desk/shopView.ts'
import type { MoneyRules } from '../prices/inputs.ts'
import { moneyRules } from '../prices/moneyRules.ts'
import { followCosts } from '../shelf/costs.ts'
import { chargeSold, type JobBill, netOf } from './jobBill.ts'

const year = 365 * 1440
const month = 30 * 1440

/** By treatment, by technician and by month, with what each bay hour brought. */
export async function whatEarns(desk: Desk) {
  const tx = desk.store.read
  await followCosts(desk)
  const visits = await visitsSince(tx, desk.now() - year, desk.now())
  const { currency } = await shopOf(tx)
  const { labourMinor } = await moneyRules(tx)
  return { currency, labourMinor, ...earnings(visits) }
}

/** Read a month at a time, with a turn for other windows in between: a large shop has thousands of visits a year. */
async function visitsSince(tx: Tx, sinceAt: number, nowAt: number): Promise<EarnedVisit[]> {
  const [shop, rules, calendar] = await Promise.all([shopOf(tx), moneyRules(tx), calendarOf(tx)])
  const uses = Map.groupBy(await jobUses(tx, { sinceAt: sinceAt - 30 * 1440 }), use => use.jobId)
  const charge = charging(rules, shop)
  const visits: EarnedVisit[] = []
  for (let fromAt = sinceAt; fromAt <= nowAt; fromAt += month) {
    const last = fromAt + month > nowAt
    const jobs = await earnedRows(tx, fromAt, last ? undefined : fromAt + month)
    const arrived = jobs.map(job => job.arrivedAt ?? job.dropOffAt)
    const open = openSpans(
      calendar,
      Math.min(nowAt, ...arrived) - 1440,
      Math.min(nowAt, fromAt + month) + 1440,
    )
    visits.push(
      ...jobs.map(job => earnedBy(job, { shop, rules, open, uses: uses.get(job.id) ?? [], charge })),
    )
    await nextTurn()
  }
  return visits
}

interface Ground {
  readonly shop: ShopView
  readonly rules: MoneyRules
  readonly open: ReturnType<typeof openSpans>
  readonly uses: Awaited<ReturnType<typeof jobUses>>
  readonly charge: (job: EarnedRow) => JobBill
}

/** Charges what was sold; what was sold for the same before is not reckoned again. */
function charging(rules: MoneyRules, shop: ShopView): (job: EarnedRow) => JobBill {
  const known = new Map<string, JobBill>()
  return ({ treatments, charges, taxExempt, taxReversed }) => {
    const sold = { treatments, charges, taxExempt, taxReversed }
    const key = JSON.stringify(sold)
    const bill = known.get(key) ?? chargeSold(rules, shop, sold)
    known.set(key, bill)
    return bill
  }
}

function earnedBy(job: EarnedRow, { shop, rules, open, uses, charge }: Ground): EarnedVisit {
  const fromAt = job.arrivedAt ?? job.dropOffAt
  const toAt = job.leftAt ?? job.handoverAt
  const work = job.steps.filter(step => step.kind === 'work')
  const handsOnMin = (step: (typeof work)[number]) =>
    openMinutesBetween(open, step.actualStartAt ?? step.startAt, step.actualEndAt ?? step.endAt)
  const workedMin = new Map<string, number>()
  for (const step of work)
    for (const name of step.crew) workedMin.set(name, (workedMin.get(name) ?? 0) + handsOnMin(step))
  const bayMin = openMinutesBetween(open, fromAt, toAt)
  const busyMin = work.reduce((sum, step) => sum + handsOnMin(step), 0)
  const overnightMin = job.steps
    .filter(step => step.kind === 'hold')
    .reduce((sum, { startAt, endAt }) => {
      const end = Math.min(endAt, toAt)
      return sum + Math.max(0, end - startAt) - openMinutesBetween(open, startAt, end)
    }, 0)
  const bill = charge(job)
  return {
    month: dateOf(toAt, shop.zone).slice(0, 7),
    sold: bill.lines.map((line, i) => ({
      name: i < job.treatments.length ? line.name : say('Extras'),
      minor: netOf(line),
    })),
    chemicalsMinor: sumMinor(uses.map(use => Math.round(use.averageMinor))),
    workedMin,
    labourMinor: rules.labourMinor,
    bayMin,
    blockedMin: Math.max(0, bayMin - busyMin),
    overnightMin,
  }
}
