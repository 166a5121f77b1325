/** Suppliers and what they ask for: days they work, how long they take, packs, prices, carriage. */

import { dayNumber } from '../calendar/index.ts'
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

export interface PriceBreak {
  /** From this many packs on. The first break is from 1. */
  readonly fromPacks: number
  readonly packPriceMinor: number
}

export interface LeadTime {
  /** Mean working days of the supplier from the order's day to delivery. */
  readonly meanDays: number
  readonly sdDays: number
}

export interface Supplier {
  readonly id: string
  readonly name: string
  /** ISO weekdays it works and delivers on, 1 Monday .. 7 Sunday. */
  readonly weekdays: readonly number[]
  /** Dates it is closed on. */
  readonly closedOn: readonly string[]
  /** Minutes after midnight until which an order counts for the same day; null: all day. */
  readonly cutoffMin: number | null
  readonly lead: LeadTime
  /** Least value of an order in minor units; 0 for none. */
  readonly minimumOrderMinor: number
  readonly carriageMinor: number
  /** Value of goods from which carriage is free; null: never. */
  readonly freeCarriageFromMinor: number | null
}

/** How one product is bought from one supplier. */
export interface Offer {
  readonly supplierId: string
  readonly productId: string
  readonly sizeId: string
  /** Content of one pack in centi: containers in a pack times content of one. */
  readonly packCenti: number
  readonly containersPerPack: number
  /** Ascending, the first from 1 pack. */
  readonly breaks: readonly PriceBreak[]
  /** Days from delivery to the printed expiry, as this product usually comes; null where it keeps. */
  readonly shelfLifeDays: number | null
}

export function checkSupplier(supplier: Supplier): void {
  const { weekdays, lead } = supplier
  if (weekdays.length === 0 || weekdays.some(day => !Number.isInteger(day) || day < 1 || day > 7))
    refuse('weekdays-bad', { weekdays }, say('Name at least one working day, 1 for Monday to 7 for Sunday.'))
  supplier.closedOn.forEach((date, i) => {
    dayNumber(date, `closedOn.${i}`)
  })
  if (!(lead.meanDays >= 1 && lead.meanDays <= 250))
    refuse(
      'lead-bad',
      { 'lead.meanDays': lead.meanDays },
      say('{meanDays} is not a lead time; give 1 to 250 working days.', { meanDays: lead.meanDays }),
    )
  if (!(lead.sdDays >= 0 && lead.sdDays <= lead.meanDays))
    refuse(
      'lead-spread-bad',
      { 'lead.sdDays': lead.sdDays },
      say('A spread of {sdDays} days does not fit a lead time of {meanDays}; give 0 up to the lead time.', {
        sdDays: lead.sdDays,
        meanDays: lead.meanDays,
      }),
    )
  for (const field of ['minimumOrderMinor', 'carriageMinor'] as const)
    if (!Number.isSafeInteger(supplier[field]) || supplier[field] < 0)
      refuse(
        'money-bad',
        { [field]: supplier[field] },
        say('{supplier} is not an amount of money in minor units.', { supplier: supplier[field] }),
      )
}

export function checkOffer(offer: Offer): void {
  const { packCenti, breaks } = offer
  if (!Number.isSafeInteger(packCenti) || packCenti <= 0)
    refuse('pack-bad', { packCenti }, say('Give what one pack holds, more than nothing.'))
  if (breaks[0]?.fromPacks !== 1)
    refuse(
      'breaks-bad',
      { 'breaks.0.fromPacks': breaks[0]?.fromPacks },
      say('The first price is for 1 pack; add it.'),
    )
  breaks.forEach((entry, i) => {
    if (!Number.isSafeInteger(entry.packPriceMinor) || entry.packPriceMinor < 0)
      refuse(
        'money-bad',
        { [`breaks.${i}.packPriceMinor`]: entry.packPriceMinor },
        say('Give the price of one pack in minor units.'),
      )
    const before = breaks[i - 1]
    if (before && entry.fromPacks <= before.fromPacks)
      refuse(
        'breaks-bad',
        { [`breaks.${i}.fromPacks`]: entry.fromPacks },
        say('A price from {fromPacks} packs must come after the one from {fromPacks2}; sort them.', {
          fromPacks: entry.fromPacks,
          fromPacks2: before.fromPacks,
        }),
      )
  })
}
