import type { CureClock } from './clock.ts'
import type { CureProfile } from './profile.ts'

/** A coat that is on the car, and how it has fared. */
export interface LaidCoat {
  readonly profile: CureProfile
  readonly clock: CureClock
  /** Up to here the clock knows; from here it is projected. */
  readonly nowAt: number
  /** What is projected, and who says so: the owner, the last week's readings, or the profile for want of both. */
  readonly usualC: number
  readonly usualFrom: UsualFrom
  /** The heated cures that were recorded since the coat. */
  readonly heated: boolean
}

export type UsualFrom = 'set' | 'last week' | 'profile'
