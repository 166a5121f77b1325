/** The terms of an invoice as it was issued: what the norm's XML is written from. */
import { readDecimal } from '../money/decimal.ts'
import { sumMinor } from '../money/index.ts'
import { type ElectronicAllowance, type ElectronicInvoice, type TaxCode, wantsReason } from './invoice.ts'

interface IssuedParty {
  readonly name: string
  readonly address: string
  readonly country: string
  readonly email: string
  readonly taxNumber: string
}

/** What is kept of an invoice or a credit note. */
export interface Issued {
  readonly kind: 'invoice' | 'credit'
  /** `INV-0042` */
  readonly name: string
  /** `YYYY-MM-DD` */
  readonly issuedOn: string
  readonly dueOn: string
  readonly suppliedOn: string
  readonly currency: string
  readonly seller: IssuedParty & { readonly payTo: string }
  readonly buyer: IssuedParty
  readonly corrects: { readonly name: string; readonly issuedOn: string } | null
  readonly carWords: string
  readonly note: string
  readonly reason: string
  readonly exemption: string
  readonly allowanceReason: string
  readonly lines: readonly {
    readonly name: string
    readonly quantity: string
    readonly netMinor: number
    readonly category: TaxCode
    readonly ratePercent: string
  }[]
  readonly taxPerRate: readonly {
    readonly name: string
    readonly category: TaxCode
    readonly ratePercent: string
    readonly baseMinor: number
    readonly taxMinor: number
  }[]
  readonly withoutTaxMinor: number
  readonly taxMinor: number
  readonly withTaxMinor: number
  readonly depositMinor: number
  /** Paid on an invoice before it that was credited. */
  readonly carriedMinor: number
}

/**
 * The terms of an issued paper. What was taken off the whole is, a rate, what its lines come to above its base: so the
 * sums hold to the cent where prices have their tax in them too. A line of nothing (quantity 0) is left out.
 */
export function electronicOf(issued: Issued): ElectronicInvoice {
  const { seller, buyer, corrects, taxPerRate, withoutTaxMinor, taxMinor, withTaxMinor } = issued
  const paidMinor = issued.depositMinor + issued.carriedMinor
  const credit = issued.kind === 'credit'
  const lines = issued.lines
    .filter(line => readDecimal(line.quantity, 'quantity').units !== 0n)
    .map(({ name, quantity, netMinor, category, ratePercent }, i) => ({
      id: String(i + 1),
      name,
      quantity,
      netMinor,
      category,
      ratePercent,
    }))
  const allowances = taxPerRate.flatMap(({ category, ratePercent, baseMinor }): ElectronicAllowance[] => {
    const mine = lines.filter(line => line.category === category && line.ratePercent === ratePercent)
    const amountMinor = sumMinor(mine.map(line => line.netMinor)) - baseMinor
    return amountMinor === 0 ? [] : [{ amountMinor, reason: issued.allowanceReason, category, ratePercent }]
  })
  const untaxed = taxPerRate.find(({ category }) => wantsReason(category))
  return {
    type: credit ? '381' : '380',
    number: issued.name,
    issuedOn: issued.issuedOn,
    dueOn: issued.dueOn,
    suppliedOn: issued.suppliedOn,
    currency: issued.currency,
    seller: partyOf(seller),
    buyer: partyOf(buyer),
    corrects: corrects && { number: corrects.name, issuedOn: corrects.issuedOn },
    note: [issued.carWords, issued.reason, issued.note].filter(words => words.trim() !== '').join('\n'),
    payTo: credit ? '' : seller.payTo.trim(),
    exemption: untaxed ? issued.exemption.trim() || untaxed.name : '',
    lines,
    allowances,
    taxes: taxPerRate.map(({ name: _, ...tax }) => tax),
    sumOfLinesMinor: sumMinor(lines.map(line => line.netMinor)),
    allowancesMinor: sumMinor(allowances.map(each => each.amountMinor)),
    withoutTaxMinor,
    taxMinor,
    withTaxMinor,
    paidMinor,
    dueMinor: withTaxMinor - paidMinor,
  }
}

function partyOf({ name, address, country, email, taxNumber }: IssuedParty) {
  return {
    name: name.trim(),
    address: address
      .split(/\r?\n/)
      .map(line => line.trim())
      .filter(line => line !== ''),
    country,
    email: email.trim(),
    taxNumber: taxNumber.replaceAll(/\s/g, ''),
  }
}
