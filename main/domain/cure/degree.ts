/** How far a coat has cured, as a band: the data sheet's early bound, the likely curve, and its late bound. */
import { monotoneCurve } from './monotoneCurve.ts'
import type { CureProfile } from './profile.ts'

/** Degrees of cure, 0..1, with `late <= likely <= early`; or the minutes to one, with `early <= likely <= late`. */
export interface Band {
  readonly early: number
  readonly likely: number
  readonly late: number
}

export interface CureCurve {
  /** The degree after so many minutes of cure; 0 before the coat is finished. */
  degreeAt(ageMin: number): Band
  /** The minutes (fractional) after which a degree 0..1 is reached. */
  ageAt(degree: number): Band
}

/**
 * The curve of a profile: monotone through 0, the first period's degree and full cure, midway between the bounds of
 * each. The bounds run through the same degrees earlier or later; they are the likely curve with its time stretched
 * piece by piece, so that the three never cross.
 */
export function cureCurve({ firstPeriod, fullCure }: CureProfile): CureCurve {
  const early = [0, firstPeriod.earlyMin, fullCure.earlyMin]
  const late = [0, firstPeriod.lateMin, fullCure.lateMin]
  const likely = early.map((minutes, i) => (minutes + late[i]!) / 2)
  const degrees = [0, firstPeriod.degree, 1]
  const curve = monotoneCurve(likely.map((x, i) => ({ x, y: degrees[i]! })))
  return {
    degreeAt: ageMin => ({
      early: curve.at(stretched(ageMin, early, likely)),
      likely: curve.at(ageMin),
      late: curve.at(stretched(ageMin, late, likely)),
    }),
    ageAt: degree => {
      const age = curve.inverse(degree)
      return { early: stretched(age, likely, early), likely: age, late: stretched(age, likely, late) }
    },
  }
}

/** `value` carried from one rising scale to another, in straight pieces between the marks; held at the last mark. */
function stretched(value: number, from: readonly number[], to: readonly number[]): number {
  for (let i = 1; i < from.length; i++)
    if (value < from[i]!) {
      const share = (value - from[i - 1]!) / (from[i]! - from[i - 1]!)
      return to[i - 1]! + share * (to[i]! - to[i - 1]!)
    }
  return to.at(-1)!
}
