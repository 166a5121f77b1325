/** The chain of a job with its holds and windows as long as the running clocks make them. */
import type { FloorStep } from './floorJobs.ts'

/** Longer than any horizon: in this cold the coat never gets there. */
const neverMin = 20 * 365 * 1440

interface Clocked extends FloorStep {
  /** The coat the step follows, and the minutes of cure that pass between it and the step's start, by the chain. */
  readonly after: { readonly coat: FloorStep; readonly ageMin: number } | null
}

/**
 * Steps not yet begun, after a coat that is laid, take the time its clock says instead of the profile's: a hold ends when
 * its age is reached, a window closes when its age is, the car may be moved when it is tack-free. `startAt` and `endAt`
 * of the steps say when each begins. The hold the car goes home after waits for every coat that is laid.
 */
export function clockedSteps<S extends FloorStep>(steps: readonly S[]): S[] {
  if (!steps.some(step => step.laid)) return [...steps]
  const laid = steps.filter(step => step.laid)
  return followed(steps).map((step, i) => {
    const own = steps[i]!
    const clock = step.after?.coat.laid?.clock
    if (!step.after || !clock || own.actualStartAt !== null) return own
    const { ageMin } = step.after
    const before = steps[i - 1]!
    const reached = (age: number) => clock.reachedAt(age) ?? clock.coatEndAt + neverMin
    if (step.kind === 'work') {
      const closes = closingAge(step)
      if (step.waitMax === null || closes === null || ageMin + step.waitMax > closes) return own
      return {
        ...own,
        waitMax: Math.max(0, Math.floor(reached(ageMin + step.waitMax) + noiseMin) - before.endAt),
      }
    }
    const startAt = step.after.coat === before ? before.actualEndAt! : step.startAt
    const others = i === steps.length - 1 ? laid.map(leastAt) : []
    const endAt = Math.max(Math.ceil(reached(ageMin + step.minutes) - noiseMin), ...others)
    const minutes = Math.max(0, endAt - startAt)
    const moveAfter =
      step.moveAfterMin === null
        ? null
        : Math.max(0, Math.ceil(reached(ageMin + step.moveAfterMin) - noiseMin) - startAt)
    return {
      ...own,
      minutes,
      moveAfterMin: moveAfter !== null && moveAfter < minutes ? moveAfter : null,
    }
  })
}

/** Rounding noise of the clock's sums, in minutes. */
const noiseMin = 1e-6

function followed(steps: readonly FloorStep[]): Clocked[] {
  let after: Clocked['after'] = null
  return steps.map((step): Clocked => {
    const clocked = { ...step, after: after && { ...after, ageMin: after.ageMin + (step.waitMin ?? 0) } }
    if (step.laid) after = { coat: step, ageMin: 0 }
    // A coat still to come starts a clock of its own, which nobody can read yet.
    else if (step.kind === 'work' && isCoat(step)) after = null
    else if (clocked.after) after = { ...clocked.after, ageMin: clocked.after.ageMin + step.minutes }
    return clocked
  })
}

function isCoat({ stage }: FloorStep): boolean {
  return stage === 'coat' || stage === 'topper'
}

/** The age at which the coat's profile closes the window for this step; null where it names none. */
function closingAge({ stage, after }: Clocked): number | null {
  const profile = after?.coat.laid?.profile
  if (stage === 'topper') return profile?.topperMaxMin ?? null
  return stage === 'coat' ? (profile?.recoat?.maxMin ?? null) : null
}

/** When a laid coat lets the car leave, by its profile's least figure. */
function leastAt({ laid }: FloorStep): number {
  const { clock, profile } = laid!
  return Math.ceil((clock.reachedAt(profile.handoverMin) ?? clock.coatEndAt + neverMin) - noiseMin)
}
