/** What a visit is sold for: its treatments, extras, what is charged once, packages and discounts. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { allocate } from './allocate.ts'
import type { DecimalInput } from './decimal.ts'
import { lineAmountMinor } from './document.ts'
import { majorOf, percentOfMinor, sumMinor } from './minor.ts'

export const chargeKinds = ['extra', 'shared', 'package', 'discount'] as const
export type ChargeKind = (typeof chargeKinds)[number]

/** What is charged beside the treatments' prices, or taken off them; the amount is at least zero either way. */
export interface Charge {
  readonly kind: ChargeKind
  /** The treatment it is taken off; null: an extra, or off the whole. */
  readonly treatmentId: string | null
  readonly words: string
  readonly quantity: string
  /** For one of it. */
  readonly amountMinor: number
  /** The rate of an extra; empty: the shop's usual one. */
  readonly taxKey: string
}

/** Something sold beside treatments. */
export interface Extra {
  readonly key: string
  readonly name: string
  readonly priceMinor: number
  readonly taxKey: string
}

/** Treatments that cost so many percent less together. */
export interface Package {
  readonly key: string
  readonly name: string
  readonly treatmentIds: readonly string[]
  readonly percent: string
}

/** Something taken off as the desk says it: an amount, or so many percent. */
export interface DiscountAsked {
  readonly treatmentId: string | null
  readonly amountMinor: number | null
  readonly percent: string | null
  readonly reason: string
}

/** Work that two treatments share, and what its part of the one that does not charge it costs. */
export interface SharedWork {
  readonly treatmentId: string
  readonly words: string
  readonly amountMinor: number
}

interface SoldTreatment {
  readonly id: string
  readonly name: string
  readonly priceMinor: number
}

export interface Sale {
  readonly currency: string
  readonly treatments: readonly SoldTreatment[]
  readonly shared: readonly SharedWork[]
  readonly packages: readonly Package[]
  readonly extras: readonly { readonly extra: Extra; readonly quantity: DecimalInput }[]
  readonly discounts: readonly DiscountAsked[]
}

/**
 * The charges of a sale. What is shared comes off first, then the package, then discounts on a treatment and at last those
 * on the whole; each percentage is of what is left by then, half up.
 * @throws Refusal for a discount that is no amount, has no reason, or takes off more than there is.
 */
export function chargesOf(sale: Sale): Charge[] {
  const { currency, treatments } = sale
  const left = new Map(treatments.map(({ id, priceMinor }) => [id, priceMinor]))
  const charges: Charge[] = []
  const take = (kind: ChargeKind, treatmentId: string, words: string, amountMinor: number) => {
    const most = Math.min(amountMinor, left.get(treatmentId) ?? 0)
    if (most <= 0) return
    left.set(treatmentId, left.get(treatmentId)! - most)
    charges.push({ kind, treatmentId, words, quantity: '1', amountMinor: most, taxKey: '' })
  }
  for (const { extra, quantity } of sale.extras)
    charges.push({
      kind: 'extra',
      treatmentId: null,
      words: extra.name,
      quantity: String(quantity),
      amountMinor: extra.priceMinor,
      taxKey: extra.taxKey,
    })
  for (const { treatmentId, words, amountMinor } of sale.shared)
    take('shared', treatmentId, words, amountMinor)
  const best = bestPackage(sale, left)
  if (best) {
    const prices = best.treatmentIds.map(id => left.get(id)!)
    const parts = allocate(percentOfMinor(sumMinor(prices), best.percent), prices)
    best.treatmentIds.forEach((id, i) => {
      take('package', id, best.name, parts[i]!)
    })
  }
  const inOrder = [...sale.discounts.entries()].sort(
    ([, a], [, b]) => Number(a.treatmentId === null) - Number(b.treatmentId === null),
  )
  for (const [i, asked] of inOrder) {
    const field = `discounts.${i}`
    const { treatmentId } = asked
    if (treatmentId !== null && !left.has(treatmentId))
      refuse(
        'discount-elsewhere',
        { [`${field}.treatmentId`]: treatmentId },
        say('That is not sold here any more.'),
      )
    const whole =
      treatmentId === null ? saleMinor(sale.treatments, charges, currency) : left.get(treatmentId)!
    const amountMinor = discountMinor(asked, whole, field)
    if (treatmentId !== null) take('discount', treatmentId, asked.reason.trim(), amountMinor)
    else
      charges.push({
        kind: 'discount',
        treatmentId,
        words: asked.reason.trim(),
        quantity: '1',
        amountMinor,
        taxKey: '',
      })
  }
  return charges
}

/** The package that saves most among those whose treatments are all sold. */
function bestPackage({ packages }: Sale, left: ReadonlyMap<string, number>): Package | null {
  let best: Package | null = null
  let most = 0
  for (const each of packages) {
    if (each.treatmentIds.length < 2 || !each.treatmentIds.every(id => left.has(id))) continue
    const saves = percentOfMinor(sumMinor(each.treatmentIds.map(id => left.get(id)!)), each.percent)
    if (saves > most) {
      best = each
      most = saves
    }
  }
  return best
}

function discountMinor(asked: DiscountAsked, whole: number, field: string): number {
  const { amountMinor, percent, reason } = asked
  if (reason.trim() === '')
    refuse(
      'discount-unexplained',
      { [`${field}.reason`]: reason },
      say('Say why it is taken off; a word will do.'),
    )
  const off = amountMinor ?? (percent === null ? 0 : percentOfMinor(whole, percent))
  const at = amountMinor === null ? `${field}.percent` : `${field}.amountMinor`
  if (off <= 0)
    refuse('discount-nothing', { [at]: off }, say('Give what is taken off: an amount, or percent.'))
  if (off > whole)
    refuse('discount-too-large', { [at]: off }, say('That is more than it costs; take off less.'))
  return off
}

/** What a sale comes to, as its prices are: treatments and extras less all that is taken off. */
export function saleMinor(
  treatments: readonly { readonly priceMinor: number }[],
  charges: readonly Pick<Charge, 'kind' | 'quantity' | 'amountMinor'>[],
  currency: string,
): number {
  return sumMinor([
    ...treatments.map(each => each.priceMinor),
    ...charges.map(each =>
      each.kind === 'extra'
        ? lineAmountMinor(each.quantity, majorOf(each.amountMinor, currency), currency)
        : -each.amountMinor,
    ),
  ])
}

/**
 * What shared work is worth where it is not charged again. A treatment's price is shared out over its steps by their
 * hands-on minutes; a step that several treatments share is charged in the one where it is worth most and comes off the
 * others. A shop that prices by time alone would come to the same; the rule is ours, `common practice, no source`.
 */
export function sharedOnce(
  treatments: readonly SoldTreatment[],
  steps: readonly { readonly name: string; readonly minutesIn: ReadonlyMap<number, number> }[],
): SharedWork[] {
  const worth = treatments.map(({ priceMinor }, t) => {
    const minutes = steps.map(step => step.minutesIn.get(t) ?? 0)
    return priceMinor > 0 && minutes.some(each => each > 0)
      ? allocate(priceMinor, minutes)
      : minutes.map(() => 0)
  })
  return steps.flatMap((step, s) => {
    const sharing = [...step.minutesIn.keys()].filter(t => treatments[t]!.priceMinor > 0)
    if (sharing.length < 2) return []
    const charged = sharing.reduce((best, t) => (worth[t]![s]! > worth[best]![s]! ? t : best))
    return sharing
      .filter(t => t !== charged && worth[t]![s]! > 0)
      .map(t => ({
        treatmentId: treatments[t]!.id,
        words: say('{name} is charged with {name2}', { name: step.name, name2: treatments[charged]!.name }),
        amountMinor: worth[t]![s]!,
      }))
  })
}
