/**
 * What the coats laid so far ask of the next step. A clock starts with each coat or topper; its product's profile
 * says how long the step after must wait, and how long it may.
 */

import { type CureProfile, waitBetween } from '../cure/index.ts'
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import type { Link } from './chainOf.ts'

export interface CureClock {
  readonly productId: string
  readonly productName: string
  readonly profile: CureProfile
  /** The coat, and its place in the laid chain. */
  readonly link: Link
  readonly at: number
  /** Another layer or a topper of the same treatment lies over it: its own windows no longer count. */
  covered: boolean
}

export interface CureDemand {
  readonly clock: CureClock
  /** Minutes after the coat's end before which the step may not start. */
  readonly least: number
  /** Minutes after which it is too late; null: no limit. */
  readonly most: number | null
  /** What the wait is for. */
  readonly why: 'tack-free' | 'dry' | 'recoat' | 'topper' | 'handover'
}

/** What each running clock asks of `link` as the next step. @throws Refusal for a second layer no data sheet names. */
export function demandsOn(link: Link, productId: string | null, clocks: readonly CureClock[]): CureDemand[] {
  const ofOwnTreatment = clocks.some(clock => isSameTreatment(clock.link, link))
  return clocks.map(clock => {
    const { profile } = clock
    const own = isSameTreatment(clock.link, link)
    const touchDry = { clock, least: profile.tackFreeMin, most: null, why: 'tack-free' as const }
    // Water is kept off longer than hands are.
    if (link.template.needs === 'wet')
      return { ...touchDry, least: Math.max(profile.keepDryMin, profile.tackFreeMin), why: 'dry' as const }
    if (clock.covered || productId === null || link.template.stage === 'finish') return touchDry
    const between = (figures: Parameters<typeof waitBetween>[0]) =>
      waitBetween(figures, clock.link.minutes, link.minutes)
    if (link.template.stage === 'topper' && clock.link.template.stage === 'coat') {
      if (!own && ofOwnTreatment) return touchDry
      const figures = topperFigures(link, productId, clock)
      return { clock, ...between(figures), why: 'topper' as const }
    }
    if (!own || link.template.stage !== clock.link.template.stage) return touchDry
    if (profile.recoat) return { clock, ...between(profile.recoat), why: 'recoat' as const }
    if (productId === clock.productId)
      refuse(
        'no-second-layer',
        { [`${link.field}.productId`]: clock.productName },
        say(
          '{productName} names no recoat window, so "{name}" cannot be a second layer of it; enter the window from the data sheet, or take the layer out.',
          { productName: clock.productName, name: link.template.name },
        ),
      )
    return touchDry
  })
}

/** What the coating's sheet says of this topper. @throws Refusal where it names no topper, or not this one. */
function topperFigures(link: Link, productId: string, { profile, productName }: CureClock) {
  const { topper } = profile
  const field = `${link.field}.productId`
  if (!topper)
    refuse(
      'no-topper',
      { [field]: productName },
      say(
        '{productName} names no time for a topper, so "{name}" cannot go on it; enter the time from the data sheet, or leave the topper for a later visit.',
        { productName, name: link.template.name },
      ),
    )
  if (!topper.productIds.includes(productId))
    refuse(
      'topper-not-allowed',
      { [field]: productName },
      say(
        'The topper of "{name}" is not among those {productName} allows on it; choose one of those, or add it to the coating\'s profile if its data sheet allows it.',
        { name: link.template.name, productName },
      ),
    )
  return topper
}

/** Marks what the new coat covers: every coat of its own treatment, the topper included. */
export function cover(clocks: readonly CureClock[], link: Link): void {
  for (const clock of clocks) if (isSameTreatment(clock.link, link)) clock.covered = true
}

function isSameTreatment(a: Link, b: Link): boolean {
  return a.treatments.isSubsetOf(b.treatments) || b.treatments.isSubsetOf(a.treatments)
}
