/** The chain of a job with its holds and windows as long as the running clocks make them. */
import {
  coatWindow,
  type LaidCoat,
  type Leaving,
  leavingAge,
  plannedWindow,
  type WindowName,
} from '../cure/index.ts'
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
 * its age is reached, what goes over the coat keeps the window every panel leaves it, the car may be moved when it is
 * tack-free. `startAt` and `endAt` of the steps say when each begins. The hold the car goes home after waits for every
 * coat that is laid.
 */
export function clockedSteps<S extends FloorStep>(steps: readonly S[], leaving: Leaving): S[] {
  const leastAts = steps.flatMap(({ laid }) =>
    laid ? [firstMinute(laid, leavingAge(laid.profile, leaving))] : [],
  )
  if (leastAts.length === 0) return [...steps]
  const followed = afters(steps)
  return steps.map((step, i) => {
    const after = followed[i]
    const before = steps[i - 1]
    if (!after || !before || step.actualStartAt !== null) return step
    const { laid, ageMin } = after
    if (step.kind === 'work') return windowed(step, before, after)
    const startAt = after.coat === before ? laid.clock.coatEndAt : step.startAt
    const others = i === steps.length - 1 ? leastAts : []
    const window = step.productId === after.coat.productId ? windowFor(after, steps[i + 1]) : null
    const endAt = window
      ? Math.max(startAt, window.opensAt ?? laid.clock.coatEndAt + neverMin)
      : Math.max(firstMinute(laid, ageMin + step.minutes), ...others)
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
    // Abraded or taken off, it keeps no window for what goes over it.
    else if (step.kind === 'work' && step.stage === 'correct') after = null
    // A coat still to come starts a clock of its own, which nobody can read yet.
    else if (step.kind === 'work' && (step.stage === 'coat' || step.stage === 'topper')) after = null
    else after = here && { ...here, ageMin: here.ageMin + step.minutes }
    return here
  })
}

/** The window a laid coat leaves to the step over it; null where it goes over something else, or the profile names none. */
function windowFor({ coat, laid }: After, step: FloorStep | undefined) {
  if (step?.kind !== 'work' || coat.stage !== 'coat') return null
  const recoats = step.stage === 'coat' && step.productId === coat.productId
  const name: WindowName | null = step.stage === 'topper' ? 'topper' : recoats ? 'recoat' : null
  const window = name && coatWindow(laid, name, step.minutes)
  const planned = name && plannedWindow(laid.profile, name, laid.laying, step.minutes)
  return window && planned && { ...window, plannedToAt: planned.closesAt }
}

/**
 * A step over a laid coat: it waits until the window opens, and is due before it closes where the chain binds it so. A
 * chain that gave it less room than the sheet keeps that, longer only by what a row of the sheet adds.
 */
function windowed<S extends FloorStep>(step: S, before: FloorStep, after: After): S {
  const window = windowFor(after, step)
  if (!window) return step
  const { opensAt, closesAt, plannedToAt } = window
  const waitMin = Math.max(step.waitMin ?? 0, (opensAt ?? before.endAt) - before.endAt)
  if (step.waitMax === null || closesAt === null) return { ...step, waitMin }
  const waitMax = step.waitMax + Math.max(0, closesAt - (plannedToAt ?? closesAt))
  return { ...step, waitMin, waitMax: Math.max(0, Math.min(waitMax, closesAt - before.endAt)) }
}

function reachedAt({ clock }: LaidCoat, ageMin: number): number {
  return clock.reachedAt(ageMin) ?? clock.coatEndAt + neverMin
}

/** The first whole minute at which the coat has the age. */
function firstMinute(laid: LaidCoat, ageMin: number): number {
  return Math.ceil(reachedAt(laid, ageMin) - noiseMin)
}
