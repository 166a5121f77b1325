/**
 * A concentrate thinned with water in the shop. A batch takes its share from a bottle of the concentrate and is a bottle of
 * its own, with its own life; what bookings draw of it beyond the batches that stand there is counted back to the concentrate.
 */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { takeFirstExpired } from './firstExpired.ts'
import type { Holding } from './lot.ts'

export interface Dilution {
  /** Parts of water to one part of concentrate: 9 is 1:9, a tenth of the batch. */
  readonly waterParts: number
  /** Days a batch stays good after mixing. */
  readonly lifeDays: number
}

/** Refuses a share nobody measures, and a batch that never goes off. */
export function checkDilution({ waterParts, lifeDays }: Dilution): void {
  // Rinses are thinned to about 1:500 at most (common practice, no source): beyond is a slip of the pen.
  if (!(waterParts >= 0.1 && waterParts <= 1_000))
    refuse(
      'share-bad',
      { waterParts },
      say(
        '1 to {waterParts} is no share; give the parts of water to one of concentrate, from 0.1 to 1,000.',
        { waterParts },
      ),
    )
  if (!(Number.isInteger(lifeDays) && lifeDays >= 1 && lifeDays <= 3_660))
    refuse(
      'life-bad',
      { lifeDays },
      say('{lifeDays} is not a number of days; a mixed batch keeps from 1 to 3,660.', { lifeDays }),
    )
}

/** What a batch takes of the concentrate, to the hundredth; the rest of it is water. At least a hundredth. */
export function concentrateFor(madeCenti: number, { waterParts }: Pick<Dilution, 'waterParts'>): number {
  return Math.max(1, Math.round(madeCenti / (1 + waterParts)))
}

/** `1:9 with water`. */
export function shareWords({ waterParts }: Pick<Dilution, 'waterParts'>): string {
  return say('1:{waterParts} with water', { waterParts })
}

/** A draw to come, as far as counting back needs it. */
export interface Drawable {
  readonly centi: number
  readonly sdCenti: number
}

/**
 * Splits the draws to come of a ready-to-use product, in order of time: what the batches there will serve, and what has to be
 * mixed for them, as draws of the concentrate. `dayOf` is the day number of a draw.
 */
export function countBack<Draw extends Drawable>(
  draws: readonly Draw[],
  batches: readonly Holding[],
  dilution: Pick<Dilution, 'waterParts'>,
  dayOf: (draw: Draw) => number,
): { served: Draw[]; toMix: Draw[] } {
  let left = batches
  const served: Draw[] = []
  const toMix: Draw[] = []
  for (const draw of draws) {
    const { use, shortCenti } = takeFirstExpired(left, draw.centi, dayOf(draw))
    const taken = new Map(use.map(each => [each.lotId, each.centi]))
    left = left.map(each => ({ ...each, centi: each.centi - (taken.get(each.lotId) ?? 0) }))
    const part = (centi: number) => Math.round((draw.sdCenti * centi) / draw.centi)
    const there = draw.centi - shortCenti
    if (there > 0) served.push({ ...draw, centi: there, sdCenti: part(there) })
    if (shortCenti > 0) {
      const centi = concentrateFor(shortCenti, dilution)
      toMix.push({ ...draw, centi, sdCenti: part(centi) })
    }
  }
  return { served, toMix }
}
