/**
 * What the coats laid so far ask of the next step. A clock starts with each coat or topper; its product's profile
 * says how long the step after must wait, and how long it may.
 */
import type { CureProfile } from '../cure/index.ts'
import { refuse } from '../refusal.ts'
import type { HandoverRule } from '../shop/index.ts'
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
    if (link.template.stage === 'topper' && clock.link.template.stage === 'coat')
      return own || !ofOwnTreatment
        ? { clock, least: profile.topperMin, most: profile.topperMaxMin, why: 'topper' as const }
        : touchDry
    if (!own || link.template.stage !== clock.link.template.stage) return touchDry
    if (profile.recoat)
      return { clock, least: profile.recoat.minMin, most: profile.recoat.maxMin, why: 'recoat' as const }
    if (productId === clock.productId)
      refuse(
        'no-second-layer',
        { [`${link.field}.productId`]: clock.productName },
        `${clock.productName} names no recoat window, so "${link.template.name}" cannot be a second layer of it; ` +
          'enter the window from the data sheet, or take the layer out.',
      )
    return touchDry
  })
}

/** Minutes after the coat's end before which the car may not leave. */
export function handoverFigure(profile: CureProfile, rule: HandoverRule): number {
  return rule === 'advised' ? profile.handoverAdvisedMin : profile.handoverMin
}

/** Marks what the new coat covers: every coat of its own treatment, the topper included. */
export function cover(clocks: readonly CureClock[], link: Link): void {
  for (const clock of clocks) if (isSameTreatment(clock.link, link)) clock.covered = true
}

function isSameTreatment(a: Link, b: Link): boolean {
  return a.treatments.isSubsetOf(b.treatments) || b.treatments.isSubsetOf(a.treatments)
}
