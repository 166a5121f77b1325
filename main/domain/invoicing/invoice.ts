/** An invoice as EN 16931-1 knows it: the business terms (BT) a shop needs, every amount already worked out. */

/** UNTDID 5305: standard rate, zero rate, exempt, outside the scope of tax, reverse charge. */
export type TaxCode = 'S' | 'Z' | 'E' | 'O' | 'AE'

export interface Party {
  /** BT-27, BT-44. */
  readonly name: string
  /** Line by line: street, more, town with its postal code (BG-5, BG-8). */
  readonly address: readonly string[]
  /** ISO 3166-1, two letters (BT-40, BT-55). */
  readonly country: string
  /** With its country's letters where it is a VAT number (BT-31, BT-48), else as an identifier and a number of the tax office (BT-29, BT-32, BT-46); empty: none. */
  readonly taxNumber: string
  /** BT-43, BT-58; empty: none. */
  readonly email: string
}

export interface ElectronicLine {
  /** BT-126, unique in the invoice. */
  readonly id: string
  /** BT-153. */
  readonly name: string
  /** BT-129, in pieces. */
  readonly quantity: string
  /** BT-131: what the line comes to without tax, its own discount taken off. */
  readonly netMinor: number
  readonly category: TaxCode
  /** BT-152. */
  readonly ratePercent: string
}

export interface ElectronicAllowance {
  /** BT-92, without tax. */
  readonly amountMinor: number
  /** BT-97. */
  readonly reason: string
  readonly category: TaxCode
  /** BT-96. */
  readonly ratePercent: string
}

export interface ElectronicInvoice {
  /** BT-3, of UNTDID 1001: 380 invoice, 381 credit note. */
  readonly type: '380' | '381'
  /** BT-1. */
  readonly number: string
  /** BT-2, BT-9, BT-72: `YYYY-MM-DD`. */
  readonly issuedOn: string
  readonly dueOn: string
  readonly suppliedOn: string
  /** BT-5, ISO 4217. */
  readonly currency: string
  readonly seller: Party
  readonly buyer: Party
  /** The invoice a credit note corrects (BT-25, BT-26). */
  readonly corrects: { readonly number: string; readonly issuedOn: string } | null
  /** BT-22; empty: none. */
  readonly note: string
  /** How to pay, in words (BT-82, BT-20). */
  readonly payTo: string
  /** Why no tax is charged (BT-120); empty: it is. */
  readonly exemption: string
  readonly lines: readonly ElectronicLine[]
  readonly allowances: readonly ElectronicAllowance[]
  /** BG-23. */
  readonly taxes: readonly {
    readonly category: TaxCode
    readonly ratePercent: string
    readonly baseMinor: number
    readonly taxMinor: number
  }[]
  /** BT-106, BT-107, BT-109, BT-110, BT-112, BT-113, BT-115. */
  readonly sumOfLinesMinor: number
  readonly allowancesMinor: number
  readonly withoutTaxMinor: number
  readonly taxMinor: number
  readonly withTaxMinor: number
  readonly paidMinor: number
  readonly dueMinor: number
}

/**
 * By what a party is known to the tax office: `vat` begins with its country's letters (BR-CO-09; Greece writes EL, Northern
 * Ireland XI), any other number is `other`. Empty: none.
 */
export function taxNumbersOf({ taxNumber, country }: Party): { vat: string; other: string } {
  const letters = { GR: ['EL'], GB: ['GB', 'XI'] }[country] ?? [country]
  return letters.includes(taxNumber.slice(0, 2))
    ? { vat: taxNumber, other: '' }
    : { vat: '', other: taxNumber }
}

/** Whether all of it lies outside the scope of tax: then nobody's VAT number stands in it (BR-O-02). */
export const outsideTax = ({ taxes }: Pick<ElectronicInvoice, 'taxes'>) =>
  taxes.length > 0 && taxes.every(({ category }) => category === 'O')

/** Whether a category wants the reason why no tax is charged with it (BR-E-10, BR-O-10, BR-AE-10). */
export const wantsReason = (category: TaxCode) => category === 'E' || category === 'O' || category === 'AE'

/** BT-24: the invoice keeps to the core of the norm and nothing else. */
export const coreProfile = 'urn:cen.eu:en16931:2017'
