import { issueInvoice } from '../../../main/services/money/issue.ts'
import { moneyJob } from '../../../main/services/money/jobBill.ts'
import type { MoneyRules } from '../../../main/services/prices/inputs.ts'
import { getMoneyRules, saveMoneyRules } from '../../../main/services/prices/moneyRules.ts'
import { type BookWish, bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

export interface MoneyShop {
  desk: TestDesk
  shop: TestShop
}

/** A shop that takes a tenth of the price at the hold and 8.25 % of tax on top of its prices. */
export async function moneyShop(change: Partial<MoneyRules> = {}): Promise<MoneyShop> {
  const desk = await makeDesk()
  const shop = await testShop(desk)
  await setRules(desk, {
    taxes: [
      { key: 'usual', name: 'Sales tax', percent: '8.25', category: 'S' },
      { key: 'none', name: 'No tax', percent: '0', category: 'Z' },
    ],
    depositPercent: '10',
    ...change,
  })
  return { desk, shop }
}

export async function setRules(desk: TestDesk, change: Partial<MoneyRules>): Promise<MoneyRules> {
  return saveMoneyRules(desk, { ...(await getMoneyRules(desk)), ...change })
}

export const buyer = {
  name: 'Ines Vale',
  address: '4 Quarry Row',
  country: 'us',
  email: 'ines@example.com',
  taxNumber: '',
}

/** Books, and issues the invoice; gives back the job and the invoice. */
export async function billed({ desk, shop }: MoneyShop, wish: BookWish = { treatments: ['wash'] }) {
  const job = await bookJob(desk, shop, wish)
  const invoice = await issueInvoice(desk, { id: job.id, version: job.version, buyer, note: '' })
  return { jobId: job.id, invoiceId: invoice.id, name: invoice.name }
}

export const rowOf = ({ desk }: MoneyShop, jobId: string) => moneyJob(desk.store.read, jobId)
