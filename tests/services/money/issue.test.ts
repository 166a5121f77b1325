import { expect, test } from 'vitest'
import { getBill, saveBill } from '../../../main/services/money/bill.ts'
import { getInvoice } from '../../../main/services/money/electronic.ts'
import { creditInvoice, issueInvoice } from '../../../main/services/money/issue.ts'
import { invoiceFile } from '../../../main/services/money/paperFiles.ts'
import { takePayment } from '../../../main/services/money/payments.ts'
import type { Tx } from '../../../main/store/store.ts'
import { pdfWords } from '../../documents/poppler.ts'
import { bookJob } from '../bookJob.ts'
import { billed, buyer, moneyShop, setRules } from './sample.ts'

const payment = { method: 'card' as const, tipMinor: 0, note: '' }

test('An invoice says what was agreed, whatever is changed afterwards', async () => {
  const made = await moneyShop()
  const { desk, shop } = made
  const job = await bookJob(desk, shop, { treatments: ['wash'] })
  await takePayment(desk, { ...payment, id: job.id, amountMinor: 1_200, seenPaidMinor: 0 })
  const { id, name } = await issueInvoice(desk, {
    id: job.id,
    version: job.version,
    buyer,
    note: 'Thank you',
  })
  expect(name).toBe('INV-0001')
  await setRules(desk, { taxes: [{ key: 'usual', name: 'Other', percent: '20', category: 'S' }] })
  expect(await getInvoice(desk, { id })).toMatchObject({
    name: 'INV-0001',
    issuedOn: '2026-04-15',
    dueOn: '2026-04-29',
    buyer: { ...buyer, country: 'US' },
    seller: { name: 'Ashdown Paint Care' },
    lines: [{ name: 'Hand wash', amountMinor: 12_000, leftMinor: 12_000 }],
    taxPerRate: [{ name: 'Sales tax', ratePercent: '8.25', baseMinor: 12_000, taxMinor: 990 }],
    withTaxMinor: 12_990,
    depositMinor: 1_200,
    dueMinor: 11_790,
  })
})

test('The database refuses to change or delete what was issued or paid', async () => {
  const made = await moneyShop()
  const { jobId, invoiceId } = await billed(made)
  await takePayment(made.desk, { ...payment, id: jobId, amountMinor: 5_000, seenPaidMinor: 0 })
  const before = await getInvoice(made.desk, { id: invoiceId })
  const act = (work: (tx: Tx) => Promise<unknown>) => made.desk.store.transact({ who: 'test', at: 0 }, work)
  const where = { invoiceId }
  for (const work of [
    (tx: Tx) => tx.invoice.update({ where: { id: invoiceId }, data: { note: 'x' } }),
    (tx: Tx) => tx.invoice.updateMany({ data: { number: 7 } }),
    (tx: Tx) => tx.invoiceLine.updateMany({ where, data: { name: 'x' } }),
    (tx: Tx) => tx.invoiceLine.deleteMany({ where }),
    (tx: Tx) => tx.payment.updateMany({ data: { note: 'x' } }),
    (tx: Tx) => tx.payment.deleteMany({}),
  ])
    await expect(act(work)).rejects.toThrow()
  expect(await getInvoice(made.desk, { id: invoiceId })).toEqual(before)
  expect(await made.desk.store.read.payment.findMany()).toMatchObject([{ amountMinor: 5_000, note: '' }])
})

test('Numbers have no gap and no double: two windows at once, and acts that fail in between', async () => {
  const made = await moneyShop()
  const { desk, shop } = made
  const jobs: Awaited<ReturnType<typeof bookJob>>[] = []
  for (let i = 0; i < 6; i++)
    jobs.push(
      await bookJob(desk, shop, {
        treatments: ['wash'],
        vehicle: i % 4,
        askedDate: `2026-04-2${i}`,
        kind: 'askedDay',
      }),
    )
  const issue = (i: number) =>
    issueInvoice(desk, { id: jobs[i]!.id, version: jobs[i]!.version, buyer, note: '' })
  // The same job from two windows, and two jobs at once.
  const [a, b, c] = await Promise.allSettled([issue(0), issue(0), issue(1)])
  expect([a, b, c].map(each => each.status)).toEqual(['fulfilled', 'rejected', 'fulfilled'])
  // One that dies between its number and its save: the act around it is thrown away.
  await expect(
    desk.store.transact({ who: 'test', at: 0 }, async tx => {
      const { id: _, ...row } = await tx.invoice.findFirstOrThrow({ orderBy: { number: 'desc' } })
      await tx.invoice.create({ data: { ...row, number: row.number + 1 } as never })
      throw new Error('the power went')
    }),
  ).rejects.toThrow('the power went')
  await expect(issueInvoice(desk, { id: jobs[2]!.id, version: 99, buyer, note: '' })).rejects.toMatchObject({
    code: 'stale',
  })
  await Promise.all([issue(2), issue(3), issue(4), issue(5)])
  const rows = await desk.store.read.invoice.findMany({ orderBy: { number: 'asc' } })
  expect(rows.map(row => [row.series, row.number])).toEqual([1, 2, 3, 4, 5, 6].map(n => ['INV', n]))
})

test('A credit note gives back a part, then the rest, and the job may be billed anew', async () => {
  const made = await moneyShop()
  const { desk } = made
  const { jobId, invoiceId } = await billed(made, { treatments: ['wash', 'correction'] })
  const { lines, withTaxMinor } = await getInvoice(desk, { id: invoiceId })
  const credit = async (amounts: number[], reason = 'Not done') =>
    creditInvoice(desk, {
      id: invoiceId,
      lines: lines.map((line, i) => ({ id: line.id, amountMinor: amounts[i] ?? 0 })),
      reason,
      seenCreditedMinor: (await getInvoice(desk, { id: invoiceId })).creditedMinor,
    })
  const left = lines.map(line => line.leftMinor)
  const first = await credit([0, 1_001])
  expect(first.name).toBe('CN-0001')
  const after = await getInvoice(desk, { id: invoiceId })
  expect(after.lines.map(line => line.leftMinor)).toEqual([left[0], left[1]! - 1_001])
  await expect(credit(left)).rejects.toMatchObject({ code: 'credit-too-large', field: 'lines.1.amountMinor' })
  await expect(credit([0, 0])).rejects.toMatchObject({ code: 'credit-nothing' })
  await expect(credit([0, 1], ' ')).rejects.toMatchObject({ field: 'reason' })
  expect((await getBill(desk, { id: jobId })).invoiceId).toBe(invoiceId)
  const second = await credit([left[0]!, left[1]! - 1_001])
  const notes = await Promise.all([first, second].map(({ id }) => getInvoice(desk, { id })))
  expect(notes.reduce((sum, note) => sum + note.withTaxMinor, 0)).toBe(withTaxMinor)
  await expect(
    creditInvoice(desk, { id: first.id, lines: [], reason: 'x', seenCreditedMinor: 0 }),
  ).rejects.toMatchObject({
    code: 'not-invoice',
  })
  const bill = await getBill(desk, { id: jobId })
  expect(bill).toMatchObject({ invoiceId: null, owedMinor: 0 })
  expect((await issueInvoice(desk, { id: jobId, version: bill.version, buyer, note: '' })).name).toBe(
    'INV-0002',
  )
})

test('Of two windows that credit at once, the second is told', async () => {
  const made = await moneyShop()
  const { desk } = made
  const { invoiceId: id } = await billed(made)
  const { lines } = await getInvoice(desk, { id })
  const part = { id, lines: [{ id: lines[0]!.id, amountMinor: 1_000 }], reason: 'Redo', seenCreditedMinor: 0 }
  const both = await Promise.allSettled([creditInvoice(desk, part), creditInvoice(desk, part)])
  expect(both.map(each => each.status)).toEqual(['fulfilled', 'rejected'])
  expect(both[1]).toMatchObject({ reason: { code: 'stale', field: 'seenCreditedMinor' } })
  expect((await getInvoice(desk, { id })).credits).toHaveLength(1)
})

test('What a credited invoice had been paid is not asked for again by the one in its place', async () => {
  const made = await moneyShop()
  const { desk } = made
  const { jobId, invoiceId } = await billed(made)
  const pay = { id: jobId, method: 'card' as const, tipMinor: 0, note: '' }
  await takePayment(desk, { ...pay, amountMinor: 10_000, seenPaidMinor: 0 })
  const { lines } = await getInvoice(desk, { id: invoiceId })
  const all = [{ id: lines[0]!.id, amountMinor: lines[0]!.leftMinor }]
  await creditInvoice(desk, { id: invoiceId, lines: all, reason: 'Wrong name', seenCreditedMinor: 0 })
  const { version } = await getBill(desk, { id: jobId })
  const again = await issueInvoice(desk, { id: jobId, version, buyer, note: '' })
  expect(await getInvoice(desk, again)).toMatchObject({
    withTaxMinor: 12_990,
    depositMinor: 0,
    carriedMinor: 10_000,
    dueMinor: 2_990,
  })
  const words = pdfWords((await invoiceFile(desk, again)).bytes)
  expect(words).toMatch(/Total 129\.90 Paid already -100\.00 To pay 29\.90/)
  expect((await getBill(desk, { id: jobId })).toPayMinor).toBe(2_990)
})

test('A treatment without a price, and a place that is only held, are not invoiced', async () => {
  const made = await moneyShop()
  const { desk, shop } = made
  const job = await bookJob(desk, shop, { treatments: ['wash'] })
  const bill = await getBill(desk, { id: job.id })
  const prices = bill.prices.map(each => ({ id: each.id, priceMinor: 0 }))
  const write = {
    id: job.id,
    version: job.version,
    prices,
    charges: [],
    depositMinor: 0,
    taxExempt: '',
    taxReversed: false,
  }
  const { version } = await saveBill(desk, write)
  await expect(issueInvoice(desk, { id: job.id, version, buyer, note: '' })).rejects.toMatchObject({
    code: 'price-missing',
    message: expect.stringContaining('Hand wash'),
  })
  await desk.store.transact({ who: 'test', at: 0 }, tx => tx.job.updateMany({ data: { status: 'held' } }))
  await expect(issueInvoice(desk, { id: job.id, version, buyer, note: '' })).rejects.toMatchObject({
    code: 'not-booked',
  })
})
