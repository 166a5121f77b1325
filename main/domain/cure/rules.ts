import { say, word } from '../language/index.ts'
import { degreesWords, type UnitSystem } from '../measure/index.ts'
import { type MilestoneName, milestoneAges } from './milestones.ts'
import type { CureProfile, Figure, FigureSource } from './profile.ts'

/** Null: only the data sheet has such a figure. */
const figureOf: Readonly<Record<MilestoneName, Figure | null>> = {
  tackFree: 'tackFreeMin',
  recoatOpens: 'recoat',
  recoatCloses: 'recoat',
  topperOpens: null,
  topperAdvised: null,
  topperCloses: null,
  handoverSafe: 'handoverMin',
  handoverAdvised: 'handoverAdvisedMin',
  keepDryEnds: 'keepDryMin',
  firstWash: 'firstWashMin',
  fullCureEarly: 'fullCure',
  fullCureLate: 'fullCure',
}

const named: Readonly<Record<MilestoneName, string>> = {
  tackFree: word('Tack-free'),
  recoatOpens: word('Recoat window opens'),
  recoatCloses: word('Recoat window closes'),
  topperOpens: word('Topper at the earliest'),
  topperAdvised: word('Topper advised'),
  topperCloses: word('Topper at the latest'),
  handoverSafe: word('Earliest pick-up'),
  handoverAdvised: word('Recommended pick-up'),
  keepDryEnds: word('Dry until'),
  firstWash: word('First wash'),
  fullCureEarly: word('Full cure at the earliest'),
  fullCureLate: word('Full cure at the latest'),
}

export interface MilestoneRule {
  readonly ageMin: number
  readonly source: FigureSource
  /** The rule, where it comes from, and who decides. It never says that a coat is safe. */
  readonly words: string
}

/** The rule behind a milestone, in the shop's own measure; null where the profile has no such moment. */
export function ruleOf(
  profile: CureProfile,
  name: MilestoneName,
  units: UnitSystem = 'metric',
): MilestoneRule | null {
  const ageMin = milestoneAges(profile)[name]
  if (ageMin === null) return null
  const figure = figureOf[name]
  const source = figure ? profile.sources[figure] : 'data sheet'
  const origin = source === 'data sheet' ? say('from the data sheet') : say('common practice')
  const of = /Opens|Closes/.test(name) ? say('on each panel') : say('of cure')
  const words = say('{named}: {ageMin} {of} at {referenceC}, {origin}.{profile} The data sheet decides.', {
    named: say(named[name]),
    ageMin: lengthWords(ageMin),
    of,
    referenceC: degreesWords(profile.referenceC, units),
    origin,
    profile: bendWords(profile, name, units),
  })
  return { ageMin, source, words }
}

/** How an end of a window moves with the temperature; nothing for other moments. */
function bendWords({ windowRows }: CureProfile, name: MilestoneName, units: UnitSystem): string {
  const [, window, end] = /^(recoat|topper)(Opens|Closes)$/.exec(name) ?? []
  if (!window) return ''
  const rows = windowRows
    .filter(row => row.window === window)
    .flatMap(({ fromC, toC, minMin, maxMin }) => {
      const minutes = end === 'Opens' ? minMin : maxMin
      return minutes === null
        ? []
        : [
            say('{minutes} from {fromC} to {toC}', {
              minutes: lengthWords(minutes),
              fromC: degreesWords(fromC, units),
              toC: degreesWords(toC, units),
            }),
          ]
    })
  const sheet = rows.length > 0 ? ` ${say('The sheet gives {rows}.', { rows: rows.join(', ') })}` : ''
  return end === 'Opens'
    ? ` ${say('Cold opens it later; heat opens it sooner only by a row of the sheet.{sheet}', { sheet })}`
    : ` ${say('Heat closes it sooner; cold keeps it open longer only by a row of the sheet.{sheet}', { sheet })}`
}

/** `90` as `1 h 30 min`, `10080` as `7 days`. */
function lengthWords(minutes: number): string {
  const days = minutes / 1440
  if (days >= 2 && Number.isInteger(days)) return say('{days} days', { days })
  const hours = Math.floor(minutes / 60)
  const rest = minutes % 60
  if (hours === 0) return say('{rest} min', { rest })
  return rest === 0 ? `${hours} h` : say('{hours} h {rest} min', { hours, rest })
}
