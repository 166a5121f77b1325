import { expect, test } from 'vitest'
import { getBill } from '../../../main/services/money/bill.ts'
import { getInvoice } from '../../../main/services/money/electronic.ts'
import { creditInvoice, issueInvoice } from '../../../main/services/money/issue.ts'
import { invoiceFile } from '../../../main/services/money/paperFiles.ts'
import { takePayment, undoPayment } from '../../../main/services/money/payments.ts'
import { pdfWords } from '../../documents/poppler.ts'
import { bookJob } from '../bookJob.ts'
import { billed, buyer, moneyShop } from './sample.ts'

const paid = { method: 'card' as const, amountMinor: 1_000, tipMinor: 0, note: '', seenPaidMinor: 0 }

test('A deposit before the invoice, two parts after it, and nothing is owed', async () => {
  const made = await moneyShop()
  const { jobId: id } = await billed(made)
  await takePayment(made.desk, { ...paid, id, amountMinor: 5_000 })
  expect(await getBill(made.desk, { id })).toMatchObject({ paidMinor: 5_000, toPayMinor: 7_990 })
  // Two windows take the rest at once: one of them is told.
  const rest = { ...paid, id, amountMinor: 7_990, seenPaidMinor: 5_000, tipMinor: 500 }
  const both = await Promise.allSettled([takePayment(made.desk, rest), takePayment(made.desk, rest)])
  expect(both.map(each => each.status).sort()).toEqual(['fulfilled', 'rejected'])
  expect(await getBill(made.desk, { id })).toMatchObject({ owedMinor: 0, toPayMinor: 0 })
})

test('A deposit is taken off what is asked for, before the invoice and on it', async () => {
  const made = await moneyShop()
  const job = await bookJob(made.desk, made.shop, { treatments: ['wash'] })
  await takePayment(made.desk, { ...paid, id: job.id, amountMinor: 2_000 })
  const bill = await getBill(made.desk, { id: job.id })
  expect(bill).toMatchObject({ paidMinor: 2_000, toPayMinor: 10_990 })
  const invoice = await issueInvoice(made.desk, { id: job.id, version: bill.version, buyer, note: '' })
  expect(await getInvoice(made.desk, invoice)).toMatchObject({ depositMinor: 2_000, dueMinor: 10_990 })
  const words = pdfWords((await invoiceFile(made.desk, invoice)).bytes)
  expect(words).toMatch(/Total 129\.90.*Deposit paid -20\.00.*To pay 109\.90/)
})

test('Cash for all of it is rounded to the coins there are', async () => {
  const made = await moneyShop({ cashStepMinor: 5 })
  const { jobId: id } = await billed(made, { treatments: ['correction'] })
  const { toPayMinor } = await getBill(made.desk, { id })
  expect(toPayMinor).toBe(51_960)
  await takePayment(made.desk, { ...paid, id, amountMinor: 3 })
  const rest = { ...paid, id, amountMinor: toPayMinor - 3, seenPaidMinor: 3, method: 'cash' as const }
  expect(await takePayment(made.desk, rest)).toMatchObject({ roundingMinor: -2 })
  expect(await getBill(made.desk, { id })).toMatchObject({ owedMinor: 0 })
})

test('A payment is taken back once, by another', async () => {
  const made = await moneyShop()
  const { id } = await bookJob(made.desk, made.shop, { treatments: ['wash'] })
  const deposit = await takePayment(made.desk, { ...paid, id })
  await undoPayment(made.desk, { id: deposit.id, reason: 'Typed twice' })
  expect(await getBill(made.desk, { id })).toMatchObject({
    paidMinor: 0,
    payments: [
      { amountMinor: 1_000, before: true, undone: true },
      { amountMinor: -1_000, undone: true },
    ],
  })
  await expect(undoPayment(made.desk, { id: deposit.id, reason: 'again' })).rejects.toMatchObject({
    code: 'undone',
  })
})

test('What the shop owes is paid back in parts, and a tip may come meanwhile', async () => {
  const made = await moneyShop()
  const { desk } = made
  const { jobId: id, invoiceId } = await billed(made)
  await takePayment(desk, { ...paid, id, amountMinor: 12_990 })
  const { lines } = await getInvoice(desk, { id: invoiceId })
  // Half of 120.00 at 8.25 %: 64.95.
  const half = [{ id: lines[0]!.id, amountMinor: 6_000 }]
  await creditInvoice(desk, { id: invoiceId, lines: half, reason: 'Not done', seenCreditedMinor: 0 })
  expect(await getBill(desk, { id })).toMatchObject({ toPayMinor: -6_495 })
  await takePayment(desk, { ...paid, id, amountMinor: -3_000, seenPaidMinor: 12_990 })
  await takePayment(desk, { ...paid, id, amountMinor: 0, tipMinor: 300, seenPaidMinor: 9_990 })
  await takePayment(desk, { ...paid, id, amountMinor: -3_495, seenPaidMinor: 9_990 })
  expect(await getBill(desk, { id })).toMatchObject({ paidMinor: 6_495, owedMinor: 0 })
  const more = { ...paid, id, amountMinor: -6_496, seenPaidMinor: 6_495 }
  await expect(takePayment(desk, more)).rejects.toMatchObject({ code: 'refund-too-large' })
})

test('Nothing, too much, and more back than was paid are refused', async () => {
  const made = await moneyShop()
  const { id } = await bookJob(made.desk, made.shop, { treatments: ['wash'] })
  for (const [change, code] of [
    [{ amountMinor: 0 }, 'payment-nothing'],
    [{ amountMinor: 12_991 }, 'payment-too-large'],
    [{ amountMinor: -1 }, 'refund-too-large'],
    [{ tipMinor: -1 }, 'tip-bad'],
    [{ seenPaidMinor: 5 }, 'stale'],
  ] as const)
    await expect(takePayment(made.desk, { ...paid, id, ...change })).rejects.toMatchObject({ code })
})
