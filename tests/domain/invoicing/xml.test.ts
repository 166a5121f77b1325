import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ciiOf, type ElectronicInvoice, ublOf } from '../../../main/domain/invoicing/index.ts'
import { anInvoice } from './anInvoice.ts'

interface Node {
  name: string
  attributes: Record<string, string>
  children: Node[]
  text: string
}

/** A reader of XML written for the test alone: elements, attributes, text; anything unclosed or unknown throws. */
function readXml(xml: string): Node {
  const root: Node = { name: '', attributes: {}, children: [], text: '' }
  const open = [root]
  const plain = (text: string) =>
    text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&')
  for (const [, declaration, end, begin, given = '', text] of xml.matchAll(
    /(<\?[^>]*\?>)|<\/([\w:]+)>|<([\w:]+)((?:\s[\w:]+="[^"<]*")*)>|([^<]+)/g,
  )) {
    if (declaration) continue
    if (end) {
      if (open.pop()?.name !== end) throw new Error(`</${end}> closes something else`)
    } else if (begin) {
      const attributes = Object.fromEntries(
        Array.from(given.matchAll(/\s([\w:]+)="([^"]*)"/g), ([, name, value]) => [name!, plain(value!)]),
      )
      const node: Node = { name: begin, attributes, children: [], text: '' }
      open.at(-1)!.children.push(node)
      open.push(node)
    } else open.at(-1)!.text += plain(text!)
  }
  if (open.length !== 1 || root.children.length !== 1) throw new Error('not one document')
  return root.children[0]!
}

const all = (node: Node, path: string): Node[] =>
  path
    .split('/')
    .reduce<Node[]>(
      (at, name) => at.flatMap(each => each.children.filter(child => child.name === name)),
      [node],
    )
const texts = (node: Node, path: string) => all(node, path).map(each => each.text)

const credit: ElectronicInvoice = {
  ...anInvoice,
  type: '381',
  number: 'CN-0007',
  corrects: { number: 'INV-0042', issuedOn: '2026-04-15' },
}
const trade = 'rsm:SupplyChainTradeTransaction'
const settled = `${trade}/ram:ApplicableHeaderTradeSettlement`
const summed = `${settled}/ram:SpecifiedTradeSettlementHeaderMonetarySummation`

describe('an invoice as CII', () => {
  const xml = readXml(ciiOf(anInvoice))

  it('says its profile, number, kind and days (UNTDID 2379: 102 is YYYYMMDD)', () => {
    expect(
      texts(xml, 'rsm:ExchangedDocumentContext/ram:GuidelineSpecifiedDocumentContextParameter/ram:ID'),
    ).toEqual(['urn:cen.eu:en16931:2017'])
    expect(texts(xml, 'rsm:ExchangedDocument/ram:ID')).toEqual(['INV-0042'])
    expect(texts(xml, 'rsm:ExchangedDocument/ram:TypeCode')).toEqual(['380'])
    const [issued] = all(xml, 'rsm:ExchangedDocument/ram:IssueDateTime/udt:DateTimeString')
    expect([issued!.text, issued!.attributes.format]).toEqual(['20260415', '102'])
  })

  it('carries every total in its place', () => {
    expect(all(xml, summed)[0]!.children.map(({ name, text }) => [name, text])).toEqual([
      ['ram:LineTotalAmount', '1010.00'],
      ['ram:AllowanceTotalAmount', '50.00'],
      ['ram:TaxBasisTotalAmount', '960.00'],
      ['ram:TaxTotalAmount', '182.40'],
      ['ram:GrandTotalAmount', '1142.40'],
      ['ram:TotalPrepaidAmount', '200.00'],
      ['ram:DuePayableAmount', '942.40'],
    ])
  })

  it('has each line with a price that leads to its amount, however it comes out', () => {
    const lines = `${trade}/ram:IncludedSupplyChainTradeLineItem`
    expect(
      texts(xml, `${lines}/ram:SpecifiedLineTradeAgreement/ram:NetPriceProductTradePrice/ram:ChargeAmount`),
    ).toEqual(['1000', '3.33333333'])
    expect(
      texts(
        xml,
        `${lines}/ram:SpecifiedLineTradeSettlement/ram:SpecifiedTradeSettlementLineMonetarySummation/ram:LineTotalAmount`,
      ),
    ).toEqual(['1000.00', '10.00'])
  })

  it('escapes what XML would read, and names both parties', () => {
    const party = (who: string) => `${trade}/ram:ApplicableHeaderTradeAgreement/ram:${who}TradeParty`
    expect(texts(xml, `${party('Seller')}/ram:Name`)).toEqual(['Ashdown Paint Care & Sons'])
    expect(texts(xml, `${party('Buyer')}/ram:Name`)).toEqual(['Łucja <Birk>'])
    expect(all(xml, `${party('Seller')}/ram:SpecifiedTaxRegistration/ram:ID`)[0]!.attributes.schemeID).toBe(
      'VA',
    )
    expect(all(xml, `${party('Buyer')}/ram:SpecifiedTaxRegistration`)).toEqual([])
  })

  it('names the invoice a credit note corrects', () => {
    const reference = `${settled}/ram:InvoiceReferencedDocument/ram:IssuerAssignedID`
    expect(texts(readXml(ciiOf(credit)), reference)).toEqual(['INV-0042'])
    expect(texts(xml, reference)).toEqual([])
  })
})

describe('an invoice as UBL', () => {
  it('carries the same totals', () => {
    const total = all(readXml(ublOf(anInvoice)), 'cac:LegalMonetaryTotal')[0]!
    expect(total.children.map(({ name, text, attributes }) => [name, text, attributes.currencyID])).toEqual([
      ['cbc:LineExtensionAmount', '1010.00', 'EUR'],
      ['cbc:TaxExclusiveAmount', '960.00', 'EUR'],
      ['cbc:TaxInclusiveAmount', '1142.40', 'EUR'],
      ['cbc:AllowanceTotalAmount', '50.00', 'EUR'],
      ['cbc:PrepaidAmount', '200.00', 'EUR'],
      ['cbc:PayableAmount', '942.40', 'EUR'],
    ])
  })

  it('is another document for a credit note, with its own names', () => {
    const note = readXml(ublOf(credit))
    expect(note.name).toBe('CreditNote')
    expect(texts(note, 'cbc:CreditNoteTypeCode')).toEqual(['381'])
    expect(texts(note, 'cac:CreditNoteLine/cbc:CreditedQuantity')).toEqual(['1', '3'])
    expect(texts(note, 'cac:BillingReference/cac:InvoiceDocumentReference/cbc:ID')).toEqual(['INV-0042'])
    expect(texts(readXml(ublOf(anInvoice)), 'cac:InvoiceLine/cbc:ID')).toEqual(['1', '2'])
  })
})

it('Both forms stay readable, and say the same, whatever stands in names and notes', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: 'binary', maxLength: 30 }),
      fc.string({ unit: 'grapheme', maxLength: 30 }),
      (name, note) => {
        const invoice = { ...anInvoice, note, buyer: { ...anInvoice.buyer, name } }
        const cii = texts(
          readXml(ciiOf(invoice)),
          `${trade}/ram:ApplicableHeaderTradeAgreement/ram:BuyerTradeParty/ram:Name`,
        )
        const ubl = texts(
          readXml(ublOf(invoice)),
          'cac:AccountingCustomerParty/cac:Party/cac:PartyLegalEntity/cbc:RegistrationName',
        )
        expect(ubl).toEqual(cii)
      },
    ),
  )
})
