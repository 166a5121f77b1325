/** The invoice as Cross Industry Invoice XML (UN/CEFACT D16B), the form that goes inside a PDF. */
import { majorOf } from '../money/index.ts'
import { unitPriceText } from './figures.ts'
import {
  coreProfile,
  type ElectronicInvoice,
  outsideTax,
  type Party,
  type TaxCode,
  taxNumbersOf,
  wantsReason,
} from './invoice.ts'
import { element, type Xml, xmlDocument } from './xml.ts'

const spaces = {
  'xmlns:rsm': 'urn:un:unece:uncefact:data:standard:CrossIndustryInvoice:100',
  'xmlns:ram': 'urn:un:unece:uncefact:data:standard:ReusableAggregateBusinessInformationEntity:100',
  'xmlns:qdt': 'urn:un:unece:uncefact:data:standard:QualifiedDataType:100',
  'xmlns:udt': 'urn:un:unece:uncefact:data:standard:UnqualifiedDataType:100',
}

/** CII of an invoice or credit note, UTF-8. Elements stand in the order of the schema. */
export function ciiOf(invoice: ElectronicInvoice): string {
  return xmlDocument(
    element(
      'rsm:CrossIndustryInvoice',
      [
        element('rsm:ExchangedDocumentContext', [
          element('ram:GuidelineSpecifiedDocumentContextParameter', [element('ram:ID', coreProfile)]),
        ]),
        element('rsm:ExchangedDocument', [
          element('ram:ID', invoice.number),
          element('ram:TypeCode', invoice.type),
          element('ram:IssueDateTime', [day(invoice.issuedOn)]),
          element('ram:IncludedNote', [element('ram:Content', invoice.note)]),
        ]),
        element('rsm:SupplyChainTradeTransaction', [
          ...invoice.lines.map(line => lineOf(line, invoice.currency)),
          element('ram:ApplicableHeaderTradeAgreement', [
            element('ram:SellerTradeParty', partyOf(invoice.seller, outsideTax(invoice), true)),
            element('ram:BuyerTradeParty', partyOf(invoice.buyer, outsideTax(invoice), false)),
          ]),
          element('ram:ApplicableHeaderTradeDelivery', [
            element('ram:ActualDeliverySupplyChainEvent', [
              element('ram:OccurrenceDateTime', [day(invoice.suppliedOn)]),
            ]),
          ]),
          settlementOf(invoice),
        ]),
      ],
      spaces,
    ),
  )
}

/** Format 102 is YYYYMMDD (UNTDID 2379). */
const day = (date: string): Xml => element('udt:DateTimeString', date.replaceAll('-', ''), { format: '102' })

function lineOf(line: ElectronicInvoice['lines'][number], currency: string): Xml {
  return element('ram:IncludedSupplyChainTradeLineItem', [
    element('ram:AssociatedDocumentLineDocument', [element('ram:LineID', line.id)]),
    element('ram:SpecifiedTradeProduct', [element('ram:Name', line.name)]),
    element('ram:SpecifiedLineTradeAgreement', [
      element('ram:NetPriceProductTradePrice', [
        element('ram:ChargeAmount', unitPriceText(line.netMinor, line.quantity, currency)),
      ]),
    ]),
    element('ram:SpecifiedLineTradeDelivery', [
      // C62: one, a piece (UN/ECE Recommendation 20).
      element('ram:BilledQuantity', line.quantity, { unitCode: 'C62' }),
    ]),
    element('ram:SpecifiedLineTradeSettlement', [
      element('ram:ApplicableTradeTax', [
        element('ram:TypeCode', 'VAT'),
        element('ram:CategoryCode', line.category),
        rateOf(line.category, line.ratePercent),
      ]),
      element('ram:SpecifiedTradeSettlementLineMonetarySummation', [
        element('ram:LineTotalAmount', majorOf(line.netMinor, currency)),
      ]),
    ]),
  ])
}

/** What is outside the scope of tax has no rate (BR-O-05). */
function rateOf(category: TaxCode, percent: string): Xml {
  return category === 'O' ? '' : element('ram:RateApplicablePercent', percent)
}

/** A number that is no VAT number names its owner (BR-CO-26), and a seller to the tax office besides (FC, BR-S-02). */
function partyOf(party: Party, outside: boolean, sells: boolean): Xml[] {
  const { name, address, country, email, taxNumber } = party
  const [one = '', two = '', ...more] = address
  const { vat, other } = taxNumbersOf(party)
  return [
    element('ram:ID', outside ? taxNumber : other),
    element('ram:Name', name),
    element('ram:PostalTradeAddress', [
      element('ram:LineOne', one),
      element('ram:LineTwo', two),
      element('ram:LineThree', more.join(', ')),
      element('ram:CountryID', country),
    ]),
    element('ram:URIUniversalCommunication', [element('ram:URIID', email, { schemeID: 'EM' })]),
    element('ram:SpecifiedTaxRegistration', [
      element('ram:ID', outside ? '' : vat, { schemeID: 'VA' }),
      element('ram:ID', outside || !sells ? '' : other, { schemeID: 'FC' }),
    ]),
  ]
}

function settlementOf(invoice: ElectronicInvoice): Xml {
  const { currency, corrects } = invoice
  const money = (minor: number) => majorOf(minor, currency)
  return element('ram:ApplicableHeaderTradeSettlement', [
    element('ram:InvoiceCurrencyCode', currency),
    // 1: the instrument is not said in a code, but in words (UNTDID 4461).
    element(
      'ram:SpecifiedTradeSettlementPaymentMeans',
      invoice.payTo === '' ? [] : [element('ram:TypeCode', '1'), element('ram:Information', invoice.payTo)],
    ),
    ...invoice.taxes.map(tax =>
      element('ram:ApplicableTradeTax', [
        element('ram:CalculatedAmount', money(tax.taxMinor)),
        element('ram:TypeCode', 'VAT'),
        element('ram:ExemptionReason', wantsReason(tax.category) ? invoice.exemption : ''),
        element('ram:BasisAmount', money(tax.baseMinor)),
        element('ram:CategoryCode', tax.category),
        rateOf(tax.category, tax.ratePercent),
      ]),
    ),
    ...invoice.allowances.map(allowance =>
      element('ram:SpecifiedTradeAllowanceCharge', [
        element('ram:ChargeIndicator', [element('udt:Indicator', 'false')]),
        element('ram:ActualAmount', money(allowance.amountMinor)),
        element('ram:Reason', allowance.reason),
        element('ram:CategoryTradeTax', [
          element('ram:TypeCode', 'VAT'),
          element('ram:CategoryCode', allowance.category),
          rateOf(allowance.category, allowance.ratePercent),
        ]),
      ]),
    ),
    element('ram:SpecifiedTradePaymentTerms', [element('ram:DueDateDateTime', [day(invoice.dueOn)])]),
    element('ram:SpecifiedTradeSettlementHeaderMonetarySummation', [
      element('ram:LineTotalAmount', money(invoice.sumOfLinesMinor)),
      element('ram:AllowanceTotalAmount', money(invoice.allowancesMinor)),
      element('ram:TaxBasisTotalAmount', money(invoice.withoutTaxMinor)),
      element('ram:TaxTotalAmount', money(invoice.taxMinor), { currencyID: currency }),
      element('ram:GrandTotalAmount', money(invoice.withTaxMinor)),
      element('ram:TotalPrepaidAmount', money(invoice.paidMinor)),
      element('ram:DuePayableAmount', money(invoice.dueMinor)),
    ]),
    element(
      'ram:InvoiceReferencedDocument',
      corrects === null
        ? []
        : [
            element('ram:IssuerAssignedID', corrects.number),
            element('ram:FormattedIssueDateTime', [
              element('qdt:DateTimeString', corrects.issuedOn.replaceAll('-', ''), { format: '102' }),
            ]),
          ],
    ),
  ])
}
