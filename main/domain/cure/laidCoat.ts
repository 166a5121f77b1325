import { type CureClock, cureClock } from './clock.ts'
import type { Heating } from './heating.ts'
import { type CoatWindow, waitBetween, windowOver } from './panels.ts'
import { type CureProfile, type WindowName, windowNames } from './profile.ts'
import type { BayTemperatures } from './temperatures.ts'
import { type Laying, type WindowClock, windowClock } from './windowClock.ts'

/** A coat that is on the car, and how it has fared. */
export interface LaidCoat {
  readonly profile: CureProfile
  readonly laying: Laying
  /** From the moment the last panel was done. */
  readonly clock: CureClock
  /** Null where the profile names no such window. */
  readonly windows: Readonly<Record<WindowName, WindowClock | null>>
  /** Up to here the clock knows; from here it is projected. */
  readonly nowAt: number
  /** What is projected, and who says so: the owner, the last week's readings, or the profile for want of both. */
  readonly usualC: number
  readonly usualFrom: UsualFrom
  /** The heated cures that were recorded since the coat. */
  readonly heated: boolean
}

export type UsualFrom = 'set' | 'last week' | 'profile'

/** A coat laid from `laying.fromAt` to `laying.toAt`, with its clocks running in these temperatures. */
export function laidCoat(
  profile: CureProfile,
  laying: Laying,
  temperatures: BayTemperatures & { readonly usualFrom: UsualFrom },
  heatings: readonly Heating[] = [],
): LaidCoat {
  const windows = windowNames.map(name => [name, windowClock(profile, name, laying, temperatures, heatings)])
  return {
    profile,
    laying,
    clock: cureClock(profile, laying.toAt, temperatures, heatings),
    windows: Object.fromEntries(windows) as LaidCoat['windows'],
    nowAt: temperatures.nowAt,
    usualC: temperatures.usualC,
    usualFrom: temperatures.usualFrom,
    heated: heatings.length > 0,
  }
}

/** When what takes `nextMin` may be begun over a laid coat; null where its profile names no such window. */
export function coatWindow(
  { profile, laying, windows }: LaidCoat,
  name: WindowName,
  nextMin: number,
): CoatWindow | null {
  const figures = profile[name]
  const clock = windows[name]
  return figures && clock && windowOver(clock, figures, laying, nextMin)
}

/** The same for a coat not laid yet, at the profile's reference temperature. */
export function plannedWindow(
  profile: CureProfile,
  name: WindowName,
  { fromAt, toAt }: Laying,
  nextMin: number,
): CoatWindow | null {
  const figures = profile[name]
  if (!figures) return null
  const { least, most } = waitBetween(figures, toAt - fromAt, nextMin)
  return { opensAt: toAt + least, closesAt: most === null ? null : toAt + most }
}
