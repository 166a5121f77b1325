/** What a visit is sold for, from the shop's rules and what the desk says of extras and discounts. */
import { say } from '../../domain/language/index.ts'
import { type Charge, chargesOf, type SharedWork, saleMinor, splitDeposit } from '../../domain/money/index.ts'
import { refuse } from '../../domain/refusal.ts'
import type { MoneyRules, Pricing } from './inputs.ts'

export interface SalePrice {
  readonly treatments: { id: string; name: string; priceMinor: number }[]
  readonly charges: Charge[]
  readonly totalMinor: number
  /** Treatments without a price for this size: what is asked is not the whole of it yet. */
  readonly unpriced: string[]
  readonly depositMinor: number
}

interface Sold {
  readonly treatments: readonly { readonly id: string; readonly name: string; readonly priceMinor: number }[]
  readonly shared: readonly SharedWork[]
}

/** The price of what was sold; a treatment without one takes the price agreed for it. */
export function salePrice(
  rules: MoneyRules,
  sold: Sold,
  { extras = [], discounts = [], agreed = [] }: Pricing,
  currency: string,
): SalePrice {
  const treatments = sold.treatments.map(({ id, name, priceMinor }) => ({
    id,
    name,
    priceMinor: priceMinor > 0 ? priceMinor : agreedFor(agreed, id),
  }))
  const sale = {
    currency,
    treatments,
    shared: rules.sharedOnce ? sold.shared : [],
    packages: rules.packages,
    extras: extras.map(({ key, quantity }, i) => {
      const extra = rules.extras.find(each => each.key === key)
      if (!extra)
        refuse(
          'extra-gone',
          { [`extras.${i}.key`]: key },
          say('One of the extras is not sold any more; take it out.'),
        )
      if (!/^\d{1,4}(\.\d{1,2})?$/.test(quantity) || Number(quantity) === 0)
        refuse(
          'quantity-bad',
          { [`extras.${i}.quantity`]: quantity },
          say('How many of {name}? Give 1 or more.', { name: extra.name }),
        )
      return { extra, quantity }
    }),
    discounts,
  }
  const charges = chargesOf(sale)
  const totalMinor = saleMinor(treatments, charges, currency)
  return {
    treatments,
    charges,
    totalMinor,
    unpriced: treatments.filter(each => each.priceMinor === 0).map(each => each.name),
    depositMinor: splitDeposit(totalMinor, rules.depositPercent).depositMinor,
  }
}

function agreedFor(agreed: NonNullable<Pricing['agreed']>, id: string): number {
  const at = agreed.findIndex(each => each.treatmentId === id)
  const priceMinor = agreed[at]?.priceMinor ?? 0
  if (priceMinor < 0)
    refuse('price-negative', { [`agreed.${at}.priceMinor`]: priceMinor }, say('A price is 0 or more.'))
  return priceMinor
}
