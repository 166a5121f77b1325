/** Which figure a milestone rests on, and the sentence that says so wherever a time is shown. */
import { type MilestoneName, milestoneAges } from './milestones.ts'
import type { CureProfile, Figure, FigureSource } from './profile.ts'

const figureOf: Readonly<Record<MilestoneName, Figure>> = {
  tackFree: 'tackFreeMin',
  recoatOpens: 'recoat',
  recoatCloses: 'recoat',
  topperOpens: 'topperMin',
  topperAdvised: 'topperAdvisedMin',
  topperCloses: 'topperMaxMin',
  handoverSafe: 'handoverMin',
  handoverAdvised: 'handoverAdvisedMin',
  keepDryEnds: 'keepDryMin',
  firstWash: 'firstWashMin',
  fullCureEarly: 'fullCure',
  fullCureLate: 'fullCure',
}

const named: Readonly<Record<MilestoneName, string>> = {
  tackFree: 'Tack-free',
  recoatOpens: 'Recoat window opens',
  recoatCloses: 'Recoat window closes',
  topperOpens: 'Topper at the earliest',
  topperAdvised: 'Topper advised',
  topperCloses: 'Topper at the latest',
  handoverSafe: 'Handover at the earliest',
  handoverAdvised: 'Handover advised',
  keepDryEnds: 'Dry until',
  firstWash: 'First wash',
  fullCureEarly: 'Full cure at the earliest',
  fullCureLate: 'Full cure at the latest',
}

export interface MilestoneRule {
  readonly ageMin: number
  readonly source: FigureSource
  /** The rule, where it comes from, and who decides. It never says that a coat is safe. */
  readonly words: string
}

/** The rule behind a milestone; null where the profile has no such moment. */
export function ruleOf(profile: CureProfile, name: MilestoneName): MilestoneRule | null {
  const ageMin = milestoneAges(profile)[name]
  if (ageMin === null) return null
  const source = profile.sources[figureOf[name]]
  const origin = source === 'data sheet' ? 'from the data sheet' : 'common practice'
  const words = `${named[name]}: ${lengthWords(ageMin)} of cure at ${profile.referenceC} °C, ${origin}. The data sheet decides.`
  return { ageMin, source, words }
}

/** `90` as `1 h 30 min`, `10080` as `7 days`. */
function lengthWords(minutes: number): string {
  const days = minutes / 1440
  if (days >= 2 && Number.isInteger(days)) return `${days} days`
  const hours = Math.floor(minutes / 60)
  const rest = minutes % 60
  if (hours === 0) return `${rest} min`
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`
}
