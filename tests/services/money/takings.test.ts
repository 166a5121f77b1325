import Papa from 'papaparse'
import { expect, test } from 'vitest'
import { getInvoice } from '../../../main/services/money/electronic.ts'
import { creditInvoice } from '../../../main/services/money/issue.ts'
import { takePayment } from '../../../main/services/money/payments.ts'
import { journalFile, takings } from '../../../main/services/money/takings.ts'
import { billed, moneyShop } from './sample.ts'

const pay = { tipMinor: 0, note: '', seenPaidMinor: 0 }

test('A day’s takings by the way they came, tips and deposits told apart', async () => {
  const made = await moneyShop()
  const { desk } = made
  const { jobId } = await billed(made)
  await takePayment(desk, { ...pay, id: jobId, method: 'cash', amountMinor: 2_000, tipMinor: 500 })
  await takePayment(desk, { ...pay, id: jobId, method: 'card', amountMinor: 1_000, seenPaidMinor: 2_000 })
  desk.setNow('2026-04-16T12:00:00Z')
  await takePayment(desk, { ...pay, id: jobId, method: 'card', amountMinor: 1, seenPaidMinor: 3_000 })
  const day = await takings(desk, { date: '2026-04-15' })
  expect(day).toMatchObject({
    totalMinor: 3_500,
    tipsMinor: 500,
    depositsMinor: 0,
    invoices: { count: 1, minor: 12_990 },
  })
  expect(day.ways.filter(way => way.minor > 0)).toEqual([
    { method: 'cash', minor: 2_500 },
    { method: 'card', minor: 1_000 },
  ])
})

test('The journal balances entry by entry, and is read back by a spreadsheet', async () => {
  const made = await moneyShop()
  const { desk } = made
  const { jobId, invoiceId } = await billed(made, { treatments: ['wash', 'correction'] })
  await takePayment(desk, { ...pay, id: jobId, method: 'cash', amountMinor: 2_000, tipMinor: 500 })
  const { lines } = await getInvoice(desk, { id: invoiceId })
  await creditInvoice(desk, {
    id: invoiceId,
    lines: [{ id: lines[0]!.id, amountMinor: 777 }],
    reason: 'Redo',
    seenCreditedMinor: 0,
  })
  const { bytes, name } = await journalFile(desk, { fromDate: '2026-04-01', toDate: '2026-04-30' })
  expect(name).toBe('journal 2026-04-01 to 2026-04-30.csv')
  const [, ...rows] = Papa.parse<string[]>(new TextDecoder().decode(bytes).trim()).data
  const entries = Map.groupBy(rows, row => row[0])
  expect(entries.size).toBe(3)
  for (const entry of entries.values()) {
    const sum = (column: number) => entry.reduce((all, row) => all + Math.round(Number(row[column]) * 100), 0)
    expect(sum(6)).toBe(sum(7))
    expect(sum(6)).toBeGreaterThan(0)
    // Each line is one or the other.
    for (const row of entry) expect([row[6], row[7]].filter(amount => amount !== '')).toHaveLength(1)
  }
  expect(new Set(rows.map(row => row[4]))).toEqual(
    new Set(['Customers owe', 'Sales', 'Tax to pay', 'Cash', 'Tips for the crew']),
  )
})

test('Days the other way round, or more than four years of them, are refused', async () => {
  const { desk } = await moneyShop()
  const ask = (fromDate: string, toDate: string) => journalFile(desk, { fromDate, toDate })
  await expect(ask('2026-04-02', '2026-04-01')).rejects.toMatchObject({ code: 'dates-swapped' })
  await expect(ask('2020-01-01', '2026-04-01')).rejects.toMatchObject({ code: 'dates-far' })
})
