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
  const marks: Mark[] = [
    { ...between(firstPeriod), degree: firstPeriod.degree },
    { ...between(fullCure), degree: 1 },
  ]
  const curve = monotoneCurve([start, ...marks].map(({ likely, degree }) => ({ x: likely, y: degree })))
  return {
    degreeAt: ageMin => ({
      early: curve.at(stretched(ageMin, marks, 'early', 'likely')),
      likely: curve.at(ageMin),
      late: curve.at(stretched(ageMin, marks, 'late', 'likely')),
    }),
    ageAt: degree => {
      const age = curve.inverse(degree)
      return {
        early: stretched(age, marks, 'likely', 'early'),
        likely: age,
        late: stretched(age, marks, 'likely', 'late'),
      }
    },
  }
}

/** A degree the data sheet names, and the minutes to it. */
interface Mark extends Band {
  readonly degree: number
}

const start: Mark = { early: 0, likely: 0, late: 0, degree: 0 }

function between({ earlyMin, lateMin }: { readonly earlyMin: number; readonly lateMin: number }): Band {
  return { early: earlyMin, likely: (earlyMin + lateMin) / 2, late: lateMin }
}

/** Minutes on one of the three scales told on another, in straight pieces between the marks; held at the last mark. */
function stretched(minutes: number, marks: readonly Mark[], from: keyof Band, to: keyof Band): number {
  let before = start
  for (const mark of marks) {
    const share = (minutes - before[from]) / (mark[from] - before[from])
    if (minutes < mark[from]) return before[to] + share * (mark[to] - before[to])
    before = mark
  }
  return before[to]
}
