import { expect, test } from 'vitest'
import { saveBill } from '../../../main/services/money/bill.ts'
import { getInvoice } from '../../../main/services/money/electronic.ts'
import { creditInvoice, issueInvoice } from '../../../main/services/money/issue.ts'
import { invoiceFile, statementFile } from '../../../main/services/money/paperFiles.ts'
import { pdfWords } from '../../documents/poppler.ts'
import { readPdf } from '../../documents/readPdf.ts'
import { bookJob } from '../bookJob.ts'
import { billed, buyer, moneyShop, rowOf, setRules } from './sample.ts'

test('Invoice, credit note and statement are printed from what was issued', async () => {
  const made = await moneyShop({ payTo: 'Account 4411', taxNumber: 'T 17' })
  const { desk } = made
  const { jobId, invoiceId } = await billed(made)
  await setRules(desk, { payTo: 'Elsewhere', taxNumber: 'T 18' })
  const words = async ({ bytes }: { bytes: Uint8Array }) =>
    (await readPdf(bytes)).pages.flatMap(page => page.lines).join('\n')
  const file = await invoiceFile(desk, { id: invoiceId })
  expect(file.name).toBe('INV-0001.pdf')
  const invoice = await words(file)
  for (const fact of [
    /Hand wash\s+1\s+120\.00\s+8\.25 %\s+120\.00/,
    /Total\s+129\.90/,
    /Account 4411/,
    /T 17/,
    /· invoice INV-0001/,
  ])
    expect(invoice).toMatch(fact)
  const { lines } = await getInvoice(desk, { id: invoiceId })
  const credit = await creditInvoice(desk, {
    id: invoiceId,
    lines: [{ id: lines[0]!.id, amountMinor: 12_000 }],
    reason: 'Not done',
    seenCreditedMinor: 0,
  })
  const note = await words(await invoiceFile(desk, credit))
  for (const fact of [/For invoice\s+INV-0001/, /Given back\s+129\.90/, /Not done/, /· credit note CN-0001/])
    expect(note).toMatch(fact)
  const { customerId } = await rowOf(made, jobId)
  expect(await words(await statementFile(desk, { id: customerId }))).toMatch(
    /Credit note CN-0001\s+-129\.90\s+0\.00/,
  )
})

test('A customer who reads German has half a piece with a comma, and the tax in their words', async () => {
  const made = await moneyShop()
  const { desk } = made
  const { id, version } = await bookJob(desk, made.shop, { treatments: ['wash'] })
  const { customerId } = await rowOf(made, id)
  await desk.store.transact({ who: 'test', at: 0 }, tx =>
    tx.ownerReach.upsert({
      where: { customerId },
      create: { customerId, language: 'de' },
      update: { language: 'de' },
    }),
  )
  const half = {
    kind: 'extra' as const,
    treatmentId: null,
    words: 'Tuch',
    quantity: '0.5',
    amountMinor: 900,
    taxKey: '',
  }
  const bill = {
    id,
    version,
    prices: [],
    charges: [half],
    depositMinor: 0,
    taxExempt: '',
    taxReversed: false,
  }
  const written = await saveBill(desk, bill)
  const { bytes } = await invoiceFile(
    desk,
    await issueInvoice(desk, { id, version: written.version, buyer, note: '' }),
  )
  expect(pdfWords(bytes)).toContain('Tuch 0,5 9,00 8,25 % 4,50')
  expect(pdfWords(bytes)).toContain('Ohne Steuer')
})
