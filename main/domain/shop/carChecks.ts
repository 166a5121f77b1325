/** What is looked after around the work on a car, ticked off by somebody's name. */
import { say, word } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { checkText } from './text.ts'
import { type CheckMoment, checkMoments } from './words.ts'

export interface CarCheck {
  readonly moment: CheckMoment
  readonly words: string
}

const mostChecks = 30

/** The checks of a treatment, as kept. Refuses more than 30, one without words or over 160 characters, and one said twice. */
export function checkCarChecks(checks: readonly CarCheck[], field: string): CarCheck[] {
  if (checks.length > mostChecks)
    refuse(
      'checks-many',
      { [field]: checks.length },
      say('{checks} checks are too many for one car; keep {mostChecks} or fewer.', {
        checks: checks.length,
        mostChecks,
      }),
    )
  const kept = checks.map(({ moment, words }, i) => ({
    moment,
    words: checkText(words, `${field}.${i}.words`, say('The check'), 160),
  }))
  kept.forEach(({ words }, i) => {
    if (kept.findIndex(each => each.words === words) < i)
      refuse(
        'check-twice',
        { [`${field}.${i}.words`]: words },
        say('"{words}" stands here twice; take one out.', { words }),
      )
  })
  return kept
}

/** The checks of several treatments sold together, each once, in the order they fall due. */
export function carChecksOf(treatments: readonly { readonly checks?: readonly CarCheck[] }[]): CarCheck[] {
  const all = treatments.flatMap(({ checks = [] }) => checks)
  return checkMoments.flatMap(moment =>
    all.filter(
      (each, i) => each.moment === moment && all.findIndex(other => other.words === each.words) === i,
    ),
  )
}

/** What is usual at a wash (common practice, no source; the vehicle's handbook decides). */
export const washChecks: readonly CarCheck[] = [
  {
    moment: 'arrival',
    words: word('Transport or wash mode set, 12 V support on where its systems stay awake'),
  },
  { moment: 'arrival', words: word('Sensors, cameras and open seals found: no full pressure on them') },
  { moment: 'handover', words: word('Transport or wash mode off, 12 V support taken off') },
]

/** The same where something is laid. */
export const coatChecks: readonly CarCheck[] = [
  { moment: 'coat', words: word('Sensors, cameras and rough trim masked or kept clear') },
  { moment: 'handover', words: word('Masking off, sensors and cameras wiped clear') },
]

/** The same where wheels come off. */
export const wheelChecks: readonly CarCheck[] = [
  {
    moment: 'handover',
    words: word('Wheel bolts torqued to the vehicle maker’s figure, checked a second time'),
  },
  { moment: 'handover', words: word('Owner told to have the bolts checked again after 50 to 100 km') },
]
