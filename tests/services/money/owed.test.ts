import { expect, test } from 'vitest'
import { getInvoice } from '../../../main/services/money/electronic.ts'
import { creditInvoice } from '../../../main/services/money/issue.ts'
import { owedList, statement } from '../../../main/services/money/owed.ts'
import { findPapers } from '../../../main/services/money/papers.ts'
import { takePayment } from '../../../main/services/money/payments.ts'
import { billed, moneyShop, rowOf } from './sample.ts'

test('What is open, the longest overdue first; paid ones are gone, and what is to be paid back stays', async () => {
  const made = await moneyShop()
  const { desk } = made
  const old = await billed(made, { treatments: ['wash'] })
  // On the day it is to be paid it is not late yet.
  desk.setNow('2026-04-29T12:00:00Z')
  expect(await owedList(desk)).toMatchObject({
    open: [{ dueOn: '2026-04-29', lateDays: 0 }],
    overdueCount: 0,
  })
  desk.setNow('2026-05-01T12:00:00Z')
  const fresh = await billed(made, { treatments: ['correction'], vehicle: 1 })
  const done = await billed(made, { treatments: ['wash'], vehicle: 2 })
  const pay = { method: 'card' as const, tipMinor: 0, note: '', seenPaidMinor: 0 }
  await takePayment(desk, { ...pay, id: done.jobId, amountMinor: 12_990 })
  const owed = await owedList(desk)
  expect(owed.open.map(each => [each.jobId, each.lateDays, each.owedMinor])).toEqual([
    [old.jobId, 2, 12_990],
    [fresh.jobId, 0, 51_960],
  ])
  expect(owed).toMatchObject({ owedMinor: 64_950, overdueMinor: 12_990, overdueCount: 1 })
  const { lines } = await getInvoice(desk, { id: done.invoiceId })
  await creditInvoice(desk, {
    id: done.invoiceId,
    lines: [{ id: lines[0]!.id, amountMinor: 12_000 }],
    reason: 'Redo',
    seenCreditedMinor: 0,
  })
  expect((await owedList(desk)).open.find(each => each.jobId === done.jobId)?.owedMinor).toBe(-12_990)
})

test('A statement ends in what is owed, line by line', async () => {
  const made = await moneyShop()
  const { desk } = made
  const { jobId, invoiceId, name } = await billed(made)
  desk.setNow('2026-04-16T12:00:00Z')
  await takePayment(desk, {
    method: 'cash',
    tipMinor: 300,
    note: '',
    seenPaidMinor: 0,
    id: jobId,
    amountMinor: 4_000,
  })
  desk.setNow('2026-04-17T12:00:00Z')
  const issued = await getInvoice(desk, { id: invoiceId })
  const given = [{ id: issued.lines[0]!.id, amountMinor: 1_000 }]
  const { withTaxMinor } = await getInvoice(
    desk,
    await creditInvoice(desk, { id: invoiceId, lines: given, reason: 'Redo', seenCreditedMinor: 0 }),
  )
  const { customerId } = await rowOf(made, jobId)
  const { lines, owedMinor } = await statement(desk, { id: customerId })
  expect(lines.map(line => [line.words, line.minor, line.owedMinor])).toEqual([
    [`Invoice ${name}`, 12_990, 12_990],
    ['Payment', -4_000, 8_990],
    ['Credit note CN-0001', -withTaxMinor, 8_990 - withTaxMinor],
  ])
  expect(owedMinor).toBe(8_990 - withTaxMinor)
  await expect(statement(desk, { id: 'nobody' })).rejects.toMatchObject({ code: 'missing' })
})

test('What a long statement leaves out is carried forward, and it ends in all that is owed', async () => {
  const made = await moneyShop()
  const { desk } = made
  const { jobId } = await billed(made)
  // 1,200 payments of 0.01 in, one a minute, and an invoice of 129.90 before them.
  const first = desk.now() + 1
  await desk.store.transact({ who: 'test', at: 0, followed: false }, tx =>
    tx.payment.createMany({
      data: Array.from({ length: 1_200 }, (_, i) => ({
        id: `p${String(i).padStart(4, '0')}`,
        jobId,
        at: first + i,
        who: 'test',
        method: 'card',
        amountMinor: 1,
        before: false,
      })),
    }),
  )
  const { customerId } = await rowOf(made, jobId)
  const { lines, owedMinor } = await statement(desk, { id: customerId })
  expect(lines).toHaveLength(1_001)
  // 129.90 less the 200 payments that are not shown.
  expect(lines[0]).toMatchObject({ words: 'Carried forward', minor: 12_790, owedMinor: 12_790 })
  expect(owedMinor).toBe(12_990 - 1_200)
  expect(lines.at(-1)!.owedMinor).toBe(owedMinor)
})

test('An invoice is found by its number, its owner and its car', async () => {
  const made = await moneyShop()
  const { invoiceId } = await billed(made)
  await billed(made, { treatments: ['wash'], vehicle: 1 })
  for (const text of ['INV-0001', 'Ines', 'KFR'])
    expect((await findPapers(made.desk, { text })).map(each => each.id)).toEqual([invoiceId])
  expect(await findPapers(made.desk, { text: '' })).toHaveLength(2)
  expect(await findPapers(made.desk, { text: 'nobody' })).toEqual([])
})
