/** The bill of a job: looked at, and written before it is invoiced. */
import { say } from '../../domain/language/index.ts'
import { type Charge, inCoins } from '../../domain/money/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkNote, checkText } from '../../domain/shop/index.ts'
import { assertFresh } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { nameOfCar } from '../floor/jobRows.ts'
import type { BillInput } from './inputs.ts'
import { numberWords } from './invoiceView.ts'
import { accountOf, billOf, moneyJob, standingInvoice } from './jobBill.ts'

export type BillView = Awaited<ReturnType<typeof getBill>>

/** What a job costs, what was billed and what was paid, with what may be done next. */
export async function getBill(desk: Desk, { id }: { id: string }) {
  const tx = desk.store.read
  const job = await moneyJob(tx, id)
  const bill = await billOf(tx, job)
  const { rules, shop } = bill
  const account = accountOf(job)
  const standing = standingInvoice(job)
  const buyerBefore = await tx.invoice.findFirst({
    where: { job: { customerId: job.customerId } },
    orderBy: { issuedAt: 'desc' },
    select: { buyer: true },
  })
  const toPayMinor = standing ? account.owedMinor : bill.withTaxMinor - account.paidMinor
  return {
    id,
    number: job.number,
    version: job.version,
    status: job.status,
    nowAt: desk.now(),
    customer: { id: job.customerId, name: job.customer.name },
    carName: nameOfCar(job.vehicle),
    currency: shop.currency,
    taxInPrices: rules.taxInPrices,
    taxes: rules.taxes,
    extras: rules.extras,
    prices: job.treatments.map(({ id, treatmentId, name, priceMinor }) => ({
      id,
      treatmentId,
      name,
      priceMinor,
    })),
    charges: job.charges.map(
      ({ kind, treatmentId, words, quantity, amountMinor, taxKey }): Charge => ({
        kind: kind as Charge['kind'],
        treatmentId,
        words,
        quantity,
        amountMinor,
        taxKey,
      }),
    ),
    depositMinor: job.depositMinor,
    taxExempt: job.taxExempt,
    taxReversed: job.taxReversed,
    lines: bill.lines,
    allowanceReason: bill.allowanceReason,
    taxPerRate: bill.taxPerRate,
    withoutTaxMinor: bill.withoutTaxMinor,
    taxMinor: bill.taxMinor,
    withTaxMinor: bill.withTaxMinor,
    ...account,
    /** What is still to be paid of the invoice, or of the bill before there is one. */
    toPayMinor,
    cashMinor: inCoins(toPayMinor, rules.cashStepMinor),
    unpriced: unpricedOf(job.treatments),
    /** The standing invoice; null: none yet, and the bill may still be written. */
    invoiceId: standing?.id ?? null,
    papers: job.invoices.map(({ id, kind, series, number, issuedOn, dueOn, withTaxMinor }) => ({
      id,
      kind: kind as 'invoice' | 'credit',
      name: numberWords({ series, number }),
      issuedOn,
      dueOn,
      withTaxMinor,
    })),
    payments: job.payments.map(({ id, at, who, method, amountMinor, tipMinor, note, before, undoesId }) => ({
      id,
      at,
      who,
      method,
      amountMinor,
      tipMinor,
      note,
      before,
      /** It takes another back, or was taken back. */
      undone: undoesId !== null || job.payments.some(other => other.undoesId === id),
    })),
    buyer: (buyerBefore?.buyer as unknown as Buyer | undefined) ?? {
      name: job.customer.name,
      address: '',
      country: shop.country,
      email: job.customer.email ?? '',
      taxNumber: '',
    },
    zone: shop.zone,
  }
}

interface Buyer {
  name: string
  address: string
  country: string
  email: string
  taxNumber: string
}

export function unpricedOf(treatments: readonly { name: string; priceMinor: number }[]): string[] {
  return treatments.filter(each => each.priceMinor === 0).map(each => each.name)
}

/** Writes what a job costs. Once it is invoiced it stays so, until the invoice is credited in full. */
export async function saveBill(desk: Desk, input: BillInput): Promise<{ version: number }> {
  const { id, version, prices, charges, depositMinor, taxReversed } = input
  const taxExempt = checkNote(input.taxExempt, 'taxExempt', 200)
  if (depositMinor < 0) refuse('deposit-bad', { depositMinor }, say('A deposit is 0 or more.'))
  return act(desk, async (tx, audit) => {
    const job = await moneyJob(tx, id)
    const standing = standingInvoice(job)
    if (standing)
      refuse(
        'invoiced',
        { id },
        say('Invoice {standing} is issued; what it says is changed by a credit note and a new invoice.', {
          standing: numberWords(standing),
        }),
      )
    for (const [i, row] of prices.entries()) {
      if (row.priceMinor < 0)
        refuse('price-negative', { [`prices.${i}.priceMinor`]: row.priceMinor }, say('A price is 0 or more.'))
      const sold = job.treatments.find(each => each.id === row.id)
      if (!sold)
        refuse('stale', { [`prices.${i}.id`]: row.id }, say('What was sold has changed; look at it again.'))
      await tx.jobTreatment.update({ where: { id: row.id }, data: { priceMinor: row.priceMinor } })
    }
    await tx.jobCharge.deleteMany({ where: { jobId: id } })
    await tx.jobCharge.createMany({
      data: charges.map((charge, position) =>
        checkedCharge(charge, `charges.${position}`, { jobId: id, position }),
      ),
    })
    const { count } = await tx.job.updateMany({
      where: { id, version },
      data: { depositMinor, taxExempt, taxReversed, version: { increment: 1 } },
    })
    assertFresh(count, 'job', id)
    const before = await billOf(tx, job)
    const after = await billOf(tx, await moneyJob(tx, id))
    if (after.cut)
      refuse('discount-too-large', { charges: null }, say('The discount is more than the price; give less.'))
    audit({
      act: 'bill written',
      entity: 'job',
      entityId: id,
      detail: { fromMinor: before.withTaxMinor, toMinor: after.withTaxMinor },
    })
    return { version: version + 1 }
  })
}

function checkedCharge<Row extends object>(charge: BillInput['charges'][number], field: string, row: Row) {
  const { kind, quantity, amountMinor, words } = charge
  if (amountMinor < 0) refuse('amount-bad', { [`${field}.amountMinor`]: amountMinor }, say('Give 0 or more.'))
  if (!/^\d{1,4}(\.\d{1,2})?$/.test(quantity))
    refuse(
      'quantity-bad',
      { [`${field}.quantity`]: quantity },
      say('How many? Give a number such as 1 or 0.5.'),
    )
  const what = kind === 'extra' ? say('What it is') : say('Why it is taken off')
  return { ...charge, ...row, words: checkText(words, `${field}.words`, what, 160) }
}
