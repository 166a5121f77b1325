import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { beforeEach, expect, test } from 'vitest'
import { saveBill } from '../../../main/services/money/bill.ts'
import { electronicFile, getInvoice } from '../../../main/services/money/electronic.ts'
import { creditInvoice, issueInvoice } from '../../../main/services/money/issue.ts'
import { invoiceFile } from '../../../main/services/money/paperFiles.ts'
import { getShop, updateShop } from '../../../main/services/setUp/shop.ts'
import { pdfWords } from '../../documents/poppler.ts'
import { bookJob } from '../bookJob.ts'
import { billed, buyer, type MoneyShop, moneyShop, setRules } from './sample.ts'

let made: MoneyShop
const inside = async (id: string): Promise<string | null> => {
  const { bytes } = await invoiceFile(made.desk, { id })
  const task = getDocument({ data: Uint8Array.from(bytes), verbosity: 0 })
  const files = (await (await task.promise).getAttachments()) as Record<
    string,
    { content: Uint8Array }
  > | null
  await task.destroy()
  const file = files && Object.values(files)[0]
  return file ? new TextDecoder().decode(file.content) : null
}

beforeEach(async () => {
  made = await moneyShop({ payTo: 'Account 4411', taxNumber: 'T 17' })
})

test('A complete invoice carries its CII inside and comes as UBL, and so does its credit note', async () => {
  await shopIs({ address: '12 Mill Lane\nAshdown' })
  const { invoiceId } = await billed(made)
  const view = await getInvoice(made.desk, { id: invoiceId })
  expect(view.lacks).toEqual([])
  const cii = await inside(invoiceId)
  for (const part of [
    '<ram:ID>INV-0001</ram:ID>',
    '<ram:TypeCode>380</ram:TypeCode>',
    '<ram:LineOne>12 Mill Lane</ram:LineOne>',
    '<ram:GrandTotalAmount>129.90</ram:GrandTotalAmount>',
  ])
    expect(cii).toContain(part)
  const { name, type, bytes, keep } = await electronicFile(made.desk, { id: invoiceId })
  expect({ name, type, keep }).toEqual({
    name: 'INV-0001.xml',
    type: 'application/xml; charset=utf-8',
    keep: true,
  })
  const ubl = new TextDecoder().decode(bytes)
  expect(ubl).toContain('<cbc:ID>INV-0001</cbc:ID>')
  expect(ubl).toContain('<cbc:PayableAmount currencyID="USD">129.90</cbc:PayableAmount>')
  const credit = await creditInvoice(made.desk, {
    id: invoiceId,
    lines: [{ id: view.lines[0]!.id, amountMinor: 6_000 }],
    reason: 'Half of it',
    seenCreditedMinor: 0,
  })
  expect(await inside(credit.id)).toContain('<ram:TypeCode>381</ram:TypeCode>')
  expect(new TextDecoder().decode((await electronicFile(made.desk, credit)).bytes)).toContain('<CreditNote ')
})

test('Where something is missing it is paper only, and says what, with the setting that mends it', async () => {
  await shopIs({ address: null })
  const { invoiceId } = await billed(made)
  const { lacks } = await getInvoice(made.desk, { id: invoiceId })
  expect(lacks).toEqual(['The seller needs an address: enter it in Settings, Shop. (BR-08)'])
  expect(await inside(invoiceId)).toBeNull()
  await expect(electronicFile(made.desk, { id: invoiceId })).rejects.toMatchObject({
    code: 'electronic-lacks',
    message: expect.stringContaining('BR-08'),
  })
})

test('A shop of the Union is asked before it issues paper only; elsewhere nobody is', async () => {
  await shopIs({ address: null, country: 'DE' })
  const job = await bookJob(made.desk, made.shop, { treatments: ['wash'] })
  const input = { id: job.id, version: job.version, buyer: { ...buyer, address: '' }, note: '' }
  const asked = await issueInvoice(made.desk, input).then(
    () => null,
    error => error,
  )
  expect(asked).toMatchObject({ code: 'not-electronic' })
  for (const rule of ['BR-08', 'BR-10']) expect(asked.message).toContain(rule)
  // Nothing was issued, so no number is left out.
  const issued = await issueInvoice(made.desk, { ...input, accepted: true })
  expect(issued.name).toBe('INV-0001')
  await shopIs({ country: 'US' })
  const other = await bookJob(made.desk, made.shop, { treatments: ['wash'] })
  await issueInvoice(made.desk, { ...input, id: other.id, version: other.version })
})

test('Where the customer owes the tax none is charged, and every form of the invoice says why', async () => {
  await setRules(made.desk, { taxNumber: 'DE000000000', taxInPrices: true })
  await shopIs({ address: '12 Mill Lane', country: 'DE' })
  const { id, version } = await bookJob(made.desk, made.shop, { treatments: ['wash'] })
  const bill = { id, version, prices: [], charges: [], depositMinor: 0, taxExempt: '', taxReversed: true }
  const written = await saveBill(made.desk, bill)
  const to = { ...buyer, country: 'NL' }
  const input = { id, version: written.version, buyer: to, note: '' }
  // Without the number of who owes it, it would be paper only.
  await expect(issueInvoice(made.desk, input)).rejects.toMatchObject({
    code: 'not-electronic',
    message: expect.stringContaining('BR-AE-02'),
  })
  const issued = await issueInvoice(made.desk, { ...input, buyer: { ...to, taxNumber: 'NL000000000B01' } })
  // 120.00 with 8.25 % in it are 110.85 without.
  const view = await getInvoice(made.desk, issued)
  expect(view).toMatchObject({ lacks: [], taxMinor: 0, withTaxMinor: 11_085 })
  expect(view.taxPerRate).toMatchObject([{ category: 'AE', name: 'Reverse charge' }])
  expect(pdfWords((await invoiceFile(made.desk, issued)).bytes)).toContain('No tax is charged Reverse charge')
  expect(await inside(issued.id)).toMatch(/<ram:ExemptionReason>Reverse charge<.*CategoryCode>AE</)
  const ubl = new TextDecoder().decode((await electronicFile(made.desk, issued)).bytes)
  expect(ubl).toMatch(/<cbc:ID>AE<.*<cbc:TaxExemptionReason>Reverse charge</)
})

async function shopIs(change: object): Promise<void> {
  const shop = (await getShop(made.desk))!
  await updateShop(made.desk, { ...shop, ...change } as Parameters<typeof updateShop>[1])
}
