import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { type DecimalInput, divideRounded, readDecimal, rescale, tenTo, writeDecimal } from './decimal.ts'
import { checkMinor, minorFromBigInt, percentOfMinor } from './minor.ts'

/**
 * How what a shop sells stands to the tax: S taxed at a rate, Z taxed at none, E exempt, O outside it altogether.
 * Source: UNCL 5305 as EN 16931-1 takes it (BT-118, BT-151).
 */
export const taxCategories = ['S', 'Z', 'E', 'O'] as const
/** The same, and AE: the buyer owes the tax. That follows from the buyer, so no rate of a shop has it. */
export type TaxCategory = (typeof taxCategories)[number] | 'AE'

/** A rate of the shop's. */
export interface TaxRate {
  /** By which treatments and extras name it. */
  readonly key: string
  /** As it stands on papers: "Sales tax". */
  readonly name: string
  /** A decimal from 0 to 100. */
  readonly percent: string
  readonly category: TaxCategory
}

/** What one amount at one rate comes to. `netMinor + taxMinor` is always what is paid. */
export interface TaxSplit {
  readonly netMinor: number
  readonly taxMinor: number
}

/** Refuses a rate that is no decimal or below zero. */
export function checkRate(ratePercent: DecimalInput, field = 'ratePercent'): void {
  if (readDecimal(ratePercent, field).units < 0n)
    refuse(
      'rate-negative',
      { [field]: ratePercent },
      say('A tax rate of {ratePercent} % is below zero; use 0 or more.', { ratePercent }),
    )
}

/**
 * Refuses rates no papers could be made with: one without a name, a taxed one at nothing, an untaxed one at something, two
 * of one key, more than 100 %.
 * Source: EN 16931-1 BR-S-05, BR-Z-05, BR-E-05, BR-O-05 on which category may have which rate.
 */
export function checkRates(rates: readonly TaxRate[], field: string): void {
  if (rates.length === 0)
    refuse('rates-missing', { [field]: null }, say('Keep at least one rate; with no tax it is 0 %.'))
  rates.forEach(({ key, name, percent, category }, i) => {
    const at = `${field}.${i}`
    if (name.trim() === '') refuse('rate-unnamed', { [`${at}.name`]: name }, say('Give the rate a name.'))
    checkRate(percent, `${at}.percent`)
    const { units, scale } = readDecimal(percent, `${at}.percent`)
    if (units > 100n * tenTo(scale))
      refuse(
        'rate-high',
        { [`${at}.percent`]: percent },
        say('{percent} % is no tax; give 100 or less.', { percent }),
      )
    if ((category === 'S') !== units > 0n)
      refuse(
        'rate-category',
        { [`${at}.percent`]: percent },
        category === 'S'
          ? say('A taxed rate is above 0 %; for 0 % choose zero rate, exempt or no tax.')
          : say('Zero rate, exempt and no tax are 0 %; choose taxed for a rate above it.'),
      )
    if (rates.some((other, j) => j < i && other.key === key))
      refuse('rate-twice', { [`${at}.name`]: name }, say('"{name}" is there twice; take one out.', { name }))
  })
}

/** A rate without trailing zeros, so that "19", "19.0" and 19 are one rate. */
export function shortRate(ratePercent: DecimalInput): string {
  const rate = readDecimal(ratePercent, 'ratePercent')
  let scale = rate.scale
  while (scale > 0 && rate.units % tenTo(rate.scale - scale + 1) === 0n) scale -= 1
  return writeDecimal(rescale(rate, scale, 'half-up'), scale)
}

/** Tax on top of a net amount: net × rate / 100, half up to a whole minor unit. */
export function taxOnNet(netMinor: number, ratePercent: DecimalInput): TaxSplit {
  checkRate(ratePercent)
  return { netMinor: checkMinor(netMinor, 'netMinor'), taxMinor: percentOfMinor(netMinor, ratePercent) }
}

/** Tax inside a gross amount: net = gross / (1 + rate / 100), half up; the tax is the difference, so nothing is lost. */
export function taxInGross(grossMinor: number, ratePercent: DecimalInput): TaxSplit {
  checkRate(ratePercent)
  const gross = BigInt(checkMinor(grossMinor, 'grossMinor'))
  const rate = readDecimal(ratePercent, 'ratePercent')
  const hundred = 100n * tenTo(rate.scale)
  const netMinor = minorFromBigInt(
    divideRounded(gross * hundred, hundred + rate.units, 'half-up'),
    'grossMinor',
  )
  return { netMinor, taxMinor: minorFromBigInt(gross - BigInt(netMinor), 'grossMinor') }
}
