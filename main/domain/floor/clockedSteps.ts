/** The chain of a job with its holds and windows as long as the running clocks make them. */
import type { LaidCoat } from '../cure/index.ts'
import { neverMin } from './cureMarks.ts'
import type { FloorStep } from './floorJobs.ts'

/** The coat a step follows, and the minutes of cure that pass between it and the step's start, by the chain. */
interface After {
  readonly coat: FloorStep
  readonly laid: LaidCoat
  readonly ageMin: number
}

/** Rounding noise of the clock's sums, in minutes. */
const noiseMin = 1e-6

/**
 * Steps not yet begun, after a coat that is laid, take the time its clock says instead of the profile's: a hold ends when
 * its age is reached, a window closes when its age is, the car may be moved when it is tack-free. `startAt` and `endAt`
 * of the steps say when each begins. The hold the car goes home after waits for every coat that is laid.
 */
export function clockedSteps<S extends FloorStep>(steps: readonly S[]): S[] {
  const leastAts = steps.flatMap(({ laid }) => (laid ? [firstMinute(laid, laid.profile.handoverMin)] : []))
  if (leastAts.length === 0) return [...steps]
  const followed = afters(steps)
  return steps.map((step, i) => {
    const after = followed[i]
    const before = steps[i - 1]
    if (!after || !before || step.actualStartAt !== null) return step
    const { laid, ageMin } = after
    if (step.kind === 'work') {
      const closes = closingAge(step, laid)
      if (step.waitMax === null || closes === null || ageMin + step.waitMax > closes) return step
      const closesAt = Math.floor(reachedAt(laid, ageMin + step.waitMax) + noiseMin)
      return { ...step, waitMax: Math.max(0, closesAt - before.endAt) }
    }
    const startAt = after.coat === before ? laid.clock.coatEndAt : step.startAt
    const others = i === steps.length - 1 ? leastAts : []
    const endAt = Math.max(firstMinute(laid, ageMin + step.minutes), ...others)
    const minutes = Math.max(0, endAt - startAt)
    const moveAfter =
      step.moveAfterMin === null ? null : Math.max(0, firstMinute(laid, ageMin + step.moveAfterMin) - startAt)
    return { ...step, minutes, moveAfterMin: moveAfter !== null && moveAfter < minutes ? moveAfter : null }
  })
}

/** For each step the coat whose clock runs until it begins; null: none, or one that is still to be laid. */
function afters(steps: readonly FloorStep[]): (After | null)[] {
  let after: After | null = null
  return steps.map(step => {
    const here: After | null = after && { ...after, ageMin: after.ageMin + (step.waitMin ?? 0) }
    if (step.laid) after = { coat: step, laid: step.laid, ageMin: 0 }
    // A coat still to come starts a clock of its own, which nobody can read yet.
    else if (step.kind === 'work' && (step.stage === 'coat' || step.stage === 'topper')) after = null
    else after = here && { ...here, ageMin: here.ageMin + step.minutes }
    return here
  })
}

/** The age at which the coat's profile closes the window for this step; null where it names none. */
function closingAge({ stage }: FloorStep, { profile }: LaidCoat): number | null {
  if (stage === 'topper') return profile.topperMaxMin ?? null
  return stage === 'coat' ? (profile.recoat?.maxMin ?? null) : null
}

function reachedAt({ clock }: LaidCoat, ageMin: number): number {
  return clock.reachedAt(ageMin) ?? clock.coatEndAt + neverMin
}

/** The first whole minute at which the coat has the age. */
function firstMinute(laid: LaidCoat, ageMin: number): number {
  return Math.ceil(reachedAt(laid, ageMin) - noiseMin)
}
