/**
 * A lot is one container of a batch: a bottle, a can, a box of pads. Bottles that came together share their batch and
 * dates but are lots of their own, because each is opened, weighed and used up by itself.
 */

import { dateOfDay, dayNumber } from '../calendar/index.ts'
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

export interface Lot {
  readonly id: string
  readonly productId: string
  readonly sizeId: string | null
  /** The maker's batch code, as printed; null where there is none. */
  readonly batch: string | null
  /** `YYYY-MM-DD` */
  readonly receivedOn: string
  /** Last day of use by the label; null where none is printed. */
  readonly expiresOn: string | null
  readonly openedOn: string | null
  /** Days it stays good once opened, as the product said when it was opened; null: no limit. */
  readonly lifeAfterOpeningDays: number | null
}

/** Something left of a lot, with the last day number it may be used on (null: it keeps). */
export interface Holding {
  readonly lotId: string
  readonly centi: number
  readonly opened: boolean
  readonly lastDay: number | null
}

/** The last day a lot may be used, as a day number: the earlier of the printed date and the opened bottle's own. */
export function lastDayOf(lot: Lot): number | null {
  const printed = lot.expiresOn === null ? null : dayNumber(lot.expiresOn, 'expiresOn')
  if (lot.openedOn === null || lot.lifeAfterOpeningDays === null) return printed
  const opened = dayNumber(lot.openedOn, 'openedOn') + lot.lifeAfterOpeningDays
  return printed === null ? opened : Math.min(printed, opened)
}

/** The last day a lot may be used, as a date; null: it keeps. */
export function lastDateOf(lot: Lot): string | null {
  const last = lastDayOf(lot)
  return last === null ? null : dateOfDay(last)
}

export function holdingOf(lot: Lot, centi: number): Holding {
  return { lotId: lot.id, centi, opened: lot.openedOn !== null, lastDay: lastDayOf(lot) }
}

/** The lot with its bottle opened on `date`. An opened bottle is not opened again. */
export function openLot(lot: Lot, date: string, lifeAfterOpeningDays: number | null): Lot {
  if (lot.openedOn !== null)
    refuse(
      'already-open',
      { openedOn: lot.openedOn },
      say('This bottle is open since {openedOn}; draw from it, or choose another.', {
        openedOn: lot.openedOn,
      }),
    )
  if (dayNumber(date) < dayNumber(lot.receivedOn))
    refuse(
      'opened-before-received',
      { openedOn: date },
      say('{date} is before the bottle came on {receivedOn}; correct one of the dates.', {
        date,
        receivedOn: lot.receivedOn,
      }),
    )
  return { ...lot, openedOn: date, lifeAfterOpeningDays }
}

/** Whether a holding may still be used on a day. It may on its last day. */
export function usableOn(holding: Holding, day: number): boolean {
  return holding.centi > 0 && (holding.lastDay === null || holding.lastDay >= day)
}
