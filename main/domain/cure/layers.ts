/** Several coats on one car: was each laid in the window of the one under it, and what follows for the whole. */
import { type ClockMilestones, type CureClock, clockMilestones, type Reached } from './clock.ts'
import { type MilestoneName, milestoneNames } from './milestones.ts'
import type { CureProfile } from './profile.ts'

export interface Layer {
  readonly profile: CureProfile
  readonly startAt: number
  /** The clock of this coat; it begins when the coat was finished. */
  readonly clock: CureClock
}

export type WindowVerdict = 'met' | 'too early' | 'too late' | 'no window given'

/** How a coat stands to the recoat window of the one under it. */
export interface RecoatFinding {
  /** Position of the upper coat, 1 for the second. */
  readonly layer: number
  readonly verdict: WindowVerdict
  readonly opensAt: number | null
  readonly closesAt: number | null
  /** What the lower coat's data sheet asks when its window was missed; null when it was met. */
  readonly asks: string | null
}

export interface LayeredCoat {
  readonly findings: readonly RecoatFinding[]
  /** When and until when a further coat may go on, by the last coat's profile. */
  readonly nextWindow: { readonly opensAt: number | null; readonly closesAt: number | null }
  readonly milestones: ClockMilestones
}

/** Windows that shut: a further coat or a topper has to do with the uppermost coat only. */
const ofTheLast: readonly MilestoneName[] = ['recoatOpens', 'recoatCloses', 'topperCloses']

/**
 * The coats of a car taken together. The last coat's clock rules; where another product lies under it whose own time
 * is later still, that later time stands, for nothing laid on top makes a coat cure sooner.
 * @param coats at least one, in the order they were laid.
 */
export function layeredCoat(coats: readonly Layer[]): LayeredCoat {
  const each = coats.map(({ profile, clock }) => clockMilestones(profile, clock))
  const last = each.at(-1)!
  const latest = (name: MilestoneName): Reached | null => {
    if (ofTheLast.includes(name)) return last[name]
    // A coat that never gets there in this cold holds up the whole.
    if (each.some(milestones => milestones[name] === null)) return null
    return each.map(milestones => milestones[name]!).reduce((a, b) => (b.at > a.at ? b : a))
  }
  return {
    findings: coats.slice(1).map((coat, i) => recoatFinding(coats[i]!, each[i]!, coat.startAt, i + 1)),
    nextWindow: windowOf(last),
    milestones: Object.fromEntries(milestoneNames.map(name => [name, latest(name)])) as ClockMilestones,
  }
}

function windowOf(milestones: ClockMilestones) {
  return { opensAt: milestones.recoatOpens?.at ?? null, closesAt: milestones.recoatCloses?.at ?? null }
}

function recoatFinding(
  under: Layer,
  milestones: ClockMilestones,
  startAt: number,
  layer: number,
): RecoatFinding {
  const window = windowOf(milestones)
  const { recoat, missedRecoat } = under.profile
  if (!recoat) return { layer, verdict: 'no window given', ...window, asks: null }
  if (window.opensAt === null || startAt < window.opensAt)
    return { layer, verdict: 'too early', ...window, asks: missedRecoat }
  if (window.closesAt !== null && startAt > window.closesAt)
    return { layer, verdict: 'too late', ...window, asks: missedRecoat }
  return { layer, verdict: 'met', ...window, asks: null }
}
