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

/** UBL of an invoice or a credit note, UTF-8. Elements stand in the order of the schema, which the two differ in. */
export function ublOf(invoice: ElectronicInvoice): string {
  const credit = invoice.type === '381'
  const root = credit ? 'CreditNote' : 'Invoice'
  const { currency, corrects } = invoice
  const money = (name: string, minor: number) => amount(name, minor, currency)
  return xmlDocument(
    element(
      root,
      [
        element('cbc:CustomizationID', coreProfile),
        element('cbc:ID', invoice.number),
        element('cbc:IssueDate', invoice.issuedOn),
        // A credit note has its due date with the payment means.
        credit ? '' : element('cbc:DueDate', invoice.dueOn),
        element(`cbc:${root}TypeCode`, invoice.type),
        element('cbc:Note', invoice.note),
        element('cbc:DocumentCurrencyCode', currency),
        element(
          'cac:BillingReference',
          corrects === null
            ? []
            : [
                element('cac:InvoiceDocumentReference', [
                  element('cbc:ID', corrects.number),
                  element('cbc:IssueDate', corrects.issuedOn),
                ]),
              ],
        ),
        element('cac:AccountingSupplierParty', [partyOf(invoice.seller, outsideTax(invoice), true)]),
        element('cac:AccountingCustomerParty', [partyOf(invoice.buyer, outsideTax(invoice), false)]),
        element('cac:Delivery', [element('cbc:ActualDeliveryDate', invoice.suppliedOn)]),
        element(
          'cac:PaymentMeans',
          invoice.payTo === ''
            ? []
            : [
                // 1: the instrument is said in words (UNTDID 4461).
                element('cbc:PaymentMeansCode', '1', { name: invoice.payTo }),
                credit ? element('cbc:PaymentDueDate', invoice.dueOn) : '',
              ],
        ),
        ...invoice.allowances.map(each =>
          element('cac:AllowanceCharge', [
            element('cbc:ChargeIndicator', 'false'),
            element('cbc:AllowanceChargeReason', each.reason),
            money('cbc:Amount', each.amountMinor),
            categoryOf('cac:TaxCategory', each.category, each.ratePercent),
          ]),
        ),
        element('cac:TaxTotal', [
          money('cbc:TaxAmount', invoice.taxMinor),
          ...invoice.taxes.map(tax =>
            element('cac:TaxSubtotal', [
              money('cbc:TaxableAmount', tax.baseMinor),
              money('cbc:TaxAmount', tax.taxMinor),
              categoryOf(
                'cac:TaxCategory',
                tax.category,
                tax.ratePercent,
                wantsReason(tax.category) ? invoice.exemption : '',
              ),
            ]),
          ),
        ]),
        element('cac:LegalMonetaryTotal', [
          money('cbc:LineExtensionAmount', invoice.sumOfLinesMinor),
          money('cbc:TaxExclusiveAmount', invoice.withoutTaxMinor),
          money('cbc:TaxInclusiveAmount', invoice.withTaxMinor),
          money('cbc:AllowanceTotalAmount', invoice.allowancesMinor),
          money('cbc:PrepaidAmount', invoice.paidMinor),
          money('cbc:PayableAmount', invoice.dueMinor),
        ]),
        ...invoice.lines.map(line =>
          element(`cac:${root}Line`, [
            element('cbc:ID', line.id),
            element(`cbc:${credit ? 'Credited' : 'Invoiced'}Quantity`, line.quantity, {
              unitCode: 'C62',
            }),
            money('cbc:LineExtensionAmount', line.netMinor),
            element('cac:Item', [
              element('cbc:Name', line.name),
              categoryOf('cac:ClassifiedTaxCategory', line.category, line.ratePercent),
            ]),
            element('cac:Price', [
              element('cbc:PriceAmount', unitPriceText(line.netMinor, line.quantity, currency), {
                currencyID: currency,
              }),
            ]),
          ]),
        ),
      ],
      {
        xmlns: `urn:oasis:names:specification:ubl:schema:xsd:${root}-2`,
        'xmlns:cac': 'urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2',
        'xmlns:cbc': 'urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2',
      },
    ),
  )
}

const amount = (name: string, minor: number, currency: string): Xml =>
  element(name, majorOf(minor, currency), { currencyID: currency })

function categoryOf(name: string, category: TaxCode, percent: string, reason = ''): Xml {
  return element(name, [
    element('cbc:ID', category),
    // What is outside the scope of tax has no rate (BR-O-05).
    category === 'O' ? '' : element('cbc:Percent', percent),
    element('cbc:TaxExemptionReason', reason),
    element('cac:TaxScheme', [element('cbc:ID', 'VAT')]),
  ])
}

/** A number that is no VAT number names its owner (BR-CO-26), and a seller to the tax office besides (BR-S-02). */
function partyOf(party: Party, outside: boolean, sells: boolean): Xml {
  const { name, address, country, email, taxNumber } = party
  const [one = '', two = '', ...more] = address
  const { vat, other } = taxNumbersOf(party)
  const scheme = (number: string, of: string) =>
    element(
      'cac:PartyTaxScheme',
      outside || number === ''
        ? []
        : [element('cbc:CompanyID', number), element('cac:TaxScheme', [element('cbc:ID', of)])],
    )
  return element('cac:Party', [
    element('cbc:EndpointID', email, { schemeID: 'EM' }),
    element('cac:PartyIdentification', [element('cbc:ID', outside ? taxNumber : other)]),
    element('cac:PostalAddress', [
      element('cbc:StreetName', one),
      element('cbc:AdditionalStreetName', two),
      element('cac:AddressLine', more.length === 0 ? [] : [element('cbc:Line', more.join(', '))]),
      element('cac:Country', [element('cbc:IdentificationCode', country)]),
    ]),
    scheme(vat, 'VAT'),
    scheme(sells ? other : '', 'TAX'),
    element('cac:PartyLegalEntity', [element('cbc:RegistrationName', name)]),
  ])
}
