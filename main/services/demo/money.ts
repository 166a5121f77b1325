/** The demo's money: prices with tax on top, invoices of the cars that went home, what was paid and what was not yet. */
import { percentOfMinor } from '../../domain/money/index.ts'
import { toJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import type { Audit } from '../desk/desk.ts'
import { issueIn } from '../money/issue.ts'
import { billOf, moneyJob } from '../money/jobBill.ts'
import type { Happened } from './happen.ts'

const rules = {
  taxes: [
    { key: 'usual', name: 'Sales tax', percent: '8.25', category: 'S' },
    { key: 'none', name: 'Not taxed', percent: '0', category: 'Z' },
  ],
  extras: [
    { key: 'kit', name: 'Care kit', priceMinor: 4_500, taxKey: '' },
    { key: 'courtesy', name: 'Courtesy car, a day', priceMinor: 6_000, taxKey: '' },
  ],
  packages: [
    {
      key: 'sealed',
      name: 'Coated all round',
      treatmentIds: ['demo-two-layers', 'demo-wheels'],
      percent: '5',
    },
  ],
  depositPercent: '10',
  payWithinDays: 3,
  labourMinor: 4_200,
  taxNumber: 'Q-20 4411',
  payTo: 'Quillhaven Savings, account 20 4411 07',
}

/** Of three cars that went home one is paid in full, one in part and one not yet; every other booking has its deposit. */
export async function writeMoney(
  tx: Tx,
  audit: Audit,
  happened: readonly Happened[],
  nowAt: number,
): Promise<void> {
  const { taxes, extras, packages, ...rest } = rules
  const lists = { taxes: taxes.map(toJson), extras: extras.map(toJson), packages: packages.map(toJson) }
  await tx.moneyRules.create({ data: { ...rest, ...lists } })
  const gone = happened.flatMap(({ job, leftAt }) => (leftAt === null ? [] : [{ id: job.id, leftAt }]))
  for (const [i, { id, leftAt }] of gone.sort((a, b) => a.leftAt - b.leftAt).entries()) {
    const job = await moneyJob(tx, id)
    const buyer = {
      name: job.customer.name,
      address: '',
      country: 'US',
      email: job.customer.email ?? '',
      taxNumber: '',
    }
    await issueIn(tx, audit, {
      id: `demo-invoice-${i + 1}`,
      job,
      buyer,
      note: '',
      at: leftAt,
      who: 'front desk',
    })
    const { withTaxMinor } = await billOf(tx, job)
    const share = [0, 100, 50][i % 3]!
    if (share > 0)
      await pay(tx, {
        jobId: id,
        at: Math.min(leftAt + 5, nowAt),
        amountMinor: percentOfMinor(withTaxMinor, share),
      })
  }
  const booked = await tx.job.findMany({
    where: { status: 'booked' },
    orderBy: { number: 'asc' },
    select: { id: true, createdAt: true },
  })
  for (const [i, { id, createdAt }] of booked.entries()) {
    const { withTaxMinor } = await billOf(tx, await moneyJob(tx, id))
    const depositMinor = percentOfMinor(withTaxMinor, rules.depositPercent)
    await tx.job.update({ where: { id }, data: { depositMinor } })
    if (i % 2 === 0) await pay(tx, { jobId: id, at: createdAt, amountMinor: depositMinor, before: true })
  }
}

function pay(
  tx: Tx,
  paid: { jobId: string; at: number; amountMinor: number; before?: boolean },
): Promise<unknown> {
  const data = { who: 'front desk', method: 'card', before: false, ...paid, id: `demo-payment-${paid.jobId}` }
  return tx.payment.create({ data })
}
