/**
 * The CII against the published schema of EN 16931's profile of it: `tests/reference/invoiceSchema`, read by another
 * maker's validator.
 */
import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { validateXML } from 'xmllint-wasm'
import { ciiOf, type ElectronicInvoice } from '../../../main/domain/invoicing/index.ts'
import { anInvoice } from './anInvoice.ts'

const file = (name: string) => ({
  fileName: name,
  contents: readFileSync(`tests/reference/invoiceSchema/${name}`, 'utf8'),
})
const parts = [
  'QualifiedDataType.xsd',
  'ReusableAggregateBusinessInformationEntity.xsd',
  'UnqualifiedDataType.xsd',
]

async function faultsOf(...xmls: string[]) {
  const { errors } = await validateXML({
    xml: xmls.map((contents, i) => ({ fileName: `${i}.xml`, contents })),
    schema: [file('invoice.xsd')],
    preload: parts.map(file),
  })
  return errors.map(({ message }) => message)
}

const [line] = anInvoice.lines as [ElectronicInvoice['lines'][0]]
const others: Partial<ElectronicInvoice>[] = [
  {
    lines: [{ ...line, category: 'AE', ratePercent: '0' }],
    taxes: [{ category: 'AE', ratePercent: '0', baseMinor: 100_000, taxMinor: 0 }],
    exemption: 'Reverse charge',
    buyer: { ...anInvoice.buyer, taxNumber: 'NL000000000B01', country: 'NL' },
  },
  { type: '381', corrects: { number: 'INV-0042', issuedOn: '2026-04-15' }, payTo: '' },
  { seller: { ...anInvoice.seller, taxNumber: '12-34567', country: 'US', address: ['a', 'b', 'c', 'd'] } },
  {
    lines: [{ ...line, category: 'O', ratePercent: '0' }],
    taxes: [{ category: 'O', ratePercent: '0', baseMinor: 100_000, taxMinor: 0 }],
    exemption: 'Outside the scope',
    buyer: { ...anInvoice.buyer, taxNumber: 'DE999', email: 'it@example.com' },
    note: '',
  },
]

it('keeps to the published schema, as an invoice, a credit note, without a VAT number and outside tax', async () => {
  const all = [anInvoice, ...others.map(change => ({ ...anInvoice, ...change }))]
  expect(await faultsOf(...all.map(ciiOf))).toEqual([])
})

it('would not, with two elements out of their order or one too many', async () => {
  const xml = ciiOf(anInvoice)
  const swapped = xml.replace(/(<ram:CountryID>DE<\/ram:CountryID>)/, '<ram:CityName>A</ram:CityName>$1$1')
  expect(await faultsOf(swapped)).not.toEqual([])
  const moved = xml.replace(/(<ram:LineOne>[^<]*<\/ram:LineOne>)(<ram:LineTwo>[^<]*<\/ram:LineTwo>)/, '$2$1')
  expect(moved).not.toBe(xml)
  expect(await faultsOf(moved)).not.toEqual([])
})
