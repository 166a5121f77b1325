import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { allocate } from './allocate.ts'
import { type ChargedLine, totalsOf } from './bill.ts'
import type { DocumentTotals, RateTotal } from './document.ts'

type Billed = Pick<ChargedLine, 'name' | 'amountMinor' | 'allowanceMinor' | 'ratePercent' | 'category'>

/** What a credit note gives back, by rate and together; all of it at least zero. */
export type CreditTotals = Pick<
  DocumentTotals,
  'taxPerRate' | 'withoutTaxMinor' | 'taxMinor' | 'withTaxMinor'
> & {
  /** What each line gives back without its tax, in the order of the lines. */
  readonly netsMinor: readonly number[]
}

/**
 * What crediting `nowMinor` of each line gives back, after `beforeMinor` of each was. It is what the invoice came to so far
 * less what it comes to then: however many credit notes take it back piece by piece, together they are the invoice to the
 * cent, tax and all.
 * @throws Refusal for a credit below zero, above what is left of its line, or of nothing at all.
 */
export function creditTotals(
  lines: readonly Billed[],
  beforeMinor: readonly number[],
  nowMinor: readonly number[],
  amounts: 'net' | 'gross',
): CreditTotals {
  lines.forEach((line, i) => {
    const left = line.amountMinor - line.allowanceMinor - (beforeMinor[i] ?? 0)
    const now = nowMinor[i] ?? 0
    if (now < 0 || now > left)
      refuse(
        'credit-too-large',
        { [`lines.${i}.amountMinor`]: now },
        now < 0
          ? say('A credit of {name} is 0 or more.', { name: line.name })
          : say('More is credited of {name} than is left of it; credit it in full at most.', {
              name: line.name,
            }),
      )
  })
  if (nowMinor.every(minor => minor === 0))
    refuse('credit-nothing', { lines: null }, say('Nothing is credited yet; give an amount for a line.'))
  const left = (given: readonly number[]) =>
    totalsOf(
      lines.map((line, i) => ({
        ...line,
        amountMinor: line.amountMinor - line.allowanceMinor - given[i]!,
        allowanceMinor: 0,
      })),
      amounts,
    )
  const so = left(lines.map((_, i) => beforeMinor[i] ?? 0))
  const then = left(lines.map((_, i) => (beforeMinor[i] ?? 0) + (nowMinor[i] ?? 0)))
  const taxPerRate = so.taxPerRate
    .map((rate, i): RateTotal => {
      const after = then.taxPerRate[i]!
      return {
        ...rate,
        baseMinor: rate.baseMinor - after.baseMinor,
        taxMinor: rate.taxMinor - after.taxMinor,
      }
    })
    .filter(rate => rate.baseMinor !== 0 || rate.taxMinor !== 0)
  return {
    taxPerRate,
    withoutTaxMinor: so.withoutTaxMinor - then.withoutTaxMinor,
    taxMinor: so.taxMinor - then.taxMinor,
    withTaxMinor: so.withTaxMinor - then.withTaxMinor,
    netsMinor: netsOf(lines, nowMinor, taxPerRate),
  }
}

/** The lines of a rate share out what it gives back without tax. */
function netsOf(
  lines: readonly Billed[],
  nowMinor: readonly number[],
  taxPerRate: readonly RateTotal[],
): number[] {
  const nets = lines.map(() => 0)
  for (const { category, ratePercent, baseMinor } of taxPerRate) {
    const same = [...lines.keys()].filter(
      i => lines[i]!.category === category && lines[i]!.ratePercent === ratePercent && nowMinor[i]! > 0,
    )
    if (same.length === 0) continue
    const parts = allocate(
      baseMinor,
      same.map(i => nowMinor[i]!),
    )
    same.forEach((i, at) => {
      nets[i] = parts[at]!
    })
  }
  return nets
}
