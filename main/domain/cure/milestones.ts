import type { CureProfile } from './profile.ts'

/** The moments of a cure, in the order a screen lists them. */
export const milestoneNames = [
  'tackFree',
  'recoatOpens',
  'recoatCloses',
  'topperOpens',
  'topperAdvised',
  'topperCloses',
  'handoverSafe',
  'handoverAdvised',
  'keepDryEnds',
  'firstWash',
  'fullCureEarly',
  'fullCureLate',
] as const
export type MilestoneName = (typeof milestoneNames)[number]

/** The ends of windows: they hang on every panel and on what goes over it, not on the end of the coat alone. */
type WindowEnd = 'recoatOpens' | 'recoatCloses' | 'topperOpens' | 'topperCloses'

/** The moments that are an age of the coat and nothing else. */
export const momentNames = milestoneNames.filter(
  (name): name is Exclude<MilestoneName, WindowEnd> => !/Opens|Closes/.test(name),
)

/** Milestones a profile may do without. */
type Optional = WindowEnd | 'topperAdvised'

/** Minutes of cure at the reference temperature; null where the profile has no such moment. */
export type MilestoneAges = {
  readonly [Name in MilestoneName]: number | (Name extends Optional ? null : never)
}

/** Epoch minutes: `handoverSafeAt` and so on; null where the profile has no such moment. */
export type Milestones = {
  readonly [Name in Exclude<MilestoneName, WindowEnd> as `${Name}At`]:
    | number
    | (Name extends Optional ? null : never)
}

/** The cure age at which each milestone is reached; of a window, by the panel. */
export function milestoneAges(profile: CureProfile): MilestoneAges {
  return {
    tackFree: profile.tackFreeMin,
    recoatOpens: profile.recoat?.minMin ?? null,
    recoatCloses: profile.recoat?.maxMin ?? null,
    topperOpens: profile.topper?.minMin ?? null,
    topperAdvised: profile.topper?.advisedMin ?? null,
    topperCloses: profile.topper?.maxMin ?? null,
    handoverSafe: profile.handoverMin,
    handoverAdvised: profile.handoverAdvisedMin,
    keepDryEnds: profile.keepDryMin,
    firstWash: profile.firstWashMin,
    fullCureEarly: profile.fullCure.earlyMin,
    fullCureLate: profile.fullCure.lateMin,
  }
}

/**
 * When a coat finished at `coatEndAt` reaches each moment. `reachedAt` turns a cure age into the minute it is
 * reached; left out, the coat ages a minute each minute, as it does at the reference temperature.
 */
export function milestones(
  profile: CureProfile,
  coatEndAt: number,
  reachedAt: (ageMin: number) => number = ageMin => coatEndAt + ageMin,
): Milestones {
  const ages = milestoneAges(profile)
  const reached = momentNames.map(name => {
    const age = ages[name]
    return [`${name}At`, age === null ? null : reachedAt(age)]
  })
  return Object.fromEntries(reached) as Milestones
}
