import { say, unitsNow, word } from '../language/index.ts'
import { degreesWords } from '../measure/index.ts'
import type { SignalWord } from './classes.ts'
import { labelFromCodes } from './label.ts'
import { normaliseCode, type Regime } from './regime.ts'
import type { StorageGroup } from './storage.ts'

/**
 * What a person read off a product's safety data sheet. Null always means the sheet is silent or nobody has looked, which
 * is not the same as "none": an empty list or the word "none" says the sheet itself states there is nothing.
 */
export interface DataSheet {
  /** The day of the sheet's revision, YYYY-MM-DD. */
  readonly revisedOn: string | null
  readonly hazardCodes: readonly string[] | null
  readonly precautionaryCodes: readonly string[] | null
  readonly signalWord: SignalWord | 'none' | null
  readonly protection: readonly string[] | null
  readonly storageGroup: StorageGroup | null
  /** Celsius. */
  readonly storageMinC: number | null
  readonly storageMaxC: number | null
  readonly lifeAfterOpeningDays: number | 'unlimited' | null
  readonly unNumber: string | 'none' | null
}

/** What is missing when a field is null, in the words of the sentence. */
const missing: Readonly<Record<keyof DataSheet, string>> = {
  revisedOn: word('its revision date'),
  hazardCodes: word('its hazard statements'),
  precautionaryCodes: word('its precautionary statements'),
  signalWord: word('its signal word'),
  protection: word('protective equipment'),
  storageGroup: word('what it must be kept apart from'),
  storageMinC: word('the lowest storage temperature'),
  storageMaxC: word('the highest storage temperature'),
  lifeAfterOpeningDays: word('its life after opening'),
  unNumber: word('its transport number'),
}

/** A signal word as the label of the shop's language prints it. */
function signalWords(signal: SignalWord | 'none'): string {
  return signal === 'none' ? say('none||of signal words') : say(signalWordOf[signal])
}

const signalWordOf: Readonly<Record<SignalWord, string>> = {
  Danger: word('Danger'),
  Warning: word('Warning'),
}

export interface Silence {
  readonly field: keyof DataSheet
  readonly message: string
}

/**
 * Every point on which nothing is known, each in a sentence to show where the value would stand. Only a sheet that is
 * there can be silent: where none is (`kept` false), the sentence says that instead.
 */
export function silences(sheet: DataSheet, kept = true): Silence[] {
  return (Object.keys(missing) as (keyof DataSheet)[])
    .filter(field => sheet[field] === null)
    .map(field => ({
      field,
      message: kept
        ? say('The data sheet is silent on {missing}; ask the supplier, and do not guess.', {
            missing: say(missing[field]),
          })
        : field === 'hazardCodes' || field === 'precautionaryCodes'
          ? say(
              'No data sheet is filed, so {missing} are not known; ask the supplier for it, and do not guess.',
              { missing: say(missing[field]) },
            )
          : say(
              'No data sheet is filed, so {missing} is not known; ask the supplier for it, and do not guess.',
              { missing: say(missing[field]) },
            ),
    }))
}

/**
 * Where what was read off the sheet does not fit together, so that a slip of typing is seen: a signal word or a storage range
 * that contradicts the rest. The sheet itself still decides.
 */
export function sheetDoubts(sheet: DataSheet, regime: Regime): string[] {
  const doubts: string[] = []
  if (sheet.hazardCodes && sheet.signalWord) {
    const { signalWord, unsure } = labelFromCodes(sheet.hazardCodes, regime)
    const worked = signalWord ?? 'none'
    if (unsure.length === 0 && worked !== sheet.signalWord)
      doubts.push(
        say(
          'The hazard statements call for the signal word {worked}, but {signalWord} was read off the sheet; read it again.',
          { worked: signalWords(worked), signalWord: signalWords(sheet.signalWord) },
        ),
      )
  }
  if (sheet.storageMinC !== null && sheet.storageMaxC !== null && sheet.storageMinC > sheet.storageMaxC)
    doubts.push(
      say('The lowest storage temperature ({lowest}) is above the highest ({highest}); read them again.', {
        lowest: degreesWords(sheet.storageMinC, unitsNow()),
        highest: degreesWords(sheet.storageMaxC, unitsNow()),
      }),
    )
  const twice = sheet.hazardCodes?.map(normaliseCode).filter((code, i, all) => all.indexOf(code) !== i) ?? []
  for (const code of new Set(twice)) doubts.push(say('{code} is entered twice.', { code }))
  return doubts
}
