import { say } from '../language/index.ts'
import { type Hazard, hazardsOfCode, type SignalWord } from './classes.ts'
import { hazardStatement } from './hazardStatements.ts'
import type { PictogramCode } from './pictograms.ts'
import { normaliseCode, type Regime } from './regime.ts'

export interface Label {
  /** What the label shows, in order of code. */
  readonly pictograms: readonly PictogramCode[]
  /** Shown above, but the regime lets the maker leave them out. */
  readonly mayDrop: readonly PictogramCode[]
  /** Called for by a hazard and given up for another pictogram, with the rule. */
  readonly givenUp: readonly { readonly pictogram: PictogramCode; readonly rule: string }[]
  readonly signalWord: SignalWord | null
}

/** A label worked out from codes alone, with the codes whose category decides something the code does not tell. */
export interface LabelFromCodes extends Label {
  readonly statements: readonly { readonly code: string; readonly text: string }[]
  readonly unsure: readonly string[]
}

const irritation = ['skin irritation', 'eye irritation']
const environment = ['aquatic acute', 'aquatic chronic', 'ozone']

/** "Danger" outranks "Warning"; null when there is neither. Source: UN GHS 1.4.10.5.3.2; 29 CFR 1910.1200 C.2.1.1. */
export function signalWordOf(words: readonly (SignalWord | null)[]): SignalWord | null {
  return words.includes('Danger') ? 'Danger' : words.includes('Warning') ? 'Warning' : null
}

/**
 * Pictograms and signal word of hazards together. Why a pictogram is there decides whether another takes its place:
 *
 * - the skull takes the exclamation mark away (OSHA: only where it stands for acute toxicity);
 * - corrosion takes it away where it stands for skin or eye irritation;
 * - the health hazard for respiratory sensitisation takes it away for skin sensitisation and for skin or eye irritation.
 *
 * The environment is no part of the OSHA standard: its pictogram and word are left off there.
 * Sources: UN GHS 1.4.10.5.3.1; CLP article 26(1); 29 CFR 1910.1200 C.2.1.
 */
export function labelOf(hazards: readonly Hazard[], regime: Regime): Label {
  const counted = regime === 'us-osha' ? hazards.filter(each => !environment.includes(each.kind)) : hazards
  const called = new Set(counted.flatMap(hazard => hazard.pictograms))
  const marks = counted
    .filter(hazard => hazard.pictograms.includes('GHS07'))
    .map(hazard => ruleAgainstMark(hazard, counted, called, regime))
  if (marks.every(rule => rule !== null)) called.delete('GHS07')
  const rules = [...new Set(marks.filter(rule => rule !== null))]
  return {
    pictograms: [...called].sort(),
    mayDrop: droppable(counted, called, regime),
    givenUp: called.has('GHS07') ? [] : rules.map(rule => ({ pictogram: 'GHS07' as const, rule })),
    signalWord: signalWordOf(counted.map(hazard => hazard.signalWord)),
  }
}

/** The rule by which the exclamation mark is not shown for this hazard, or null when it stays. */
function ruleAgainstMark(
  { kind }: Hazard,
  hazards: readonly Hazard[],
  called: ReadonlySet<PictogramCode>,
  regime: Regime,
): string | null {
  if (called.has('GHS06') && (regime !== 'us-osha' || kind.startsWith('acute toxicity')))
    return say('The skull and crossbones stands in for the exclamation mark.')
  if (called.has('GHS05') && irritation.includes(kind))
    return say('The corrosion pictogram stands in for the exclamation mark of skin or eye irritation.')
  if (
    hazards.some(hazard => hazard.kind === 'respiratory sensitisation') &&
    [...irritation, 'skin sensitisation'].includes(kind)
  )
    return say(
      'The health hazard pictogram, shown for respiratory sensitisation, stands in for the exclamation mark.',
    )
  return null
}

/**
 * What CLP lets a maker leave out: flame and flame over circle beside the exploding bomb, unless one hazard asks for both;
 * the gas cylinder beside a flame or a skull. Source: CLP article 26(1)(a) and (e).
 */
function droppable(
  hazards: readonly Hazard[],
  called: ReadonlySet<PictogramCode>,
  regime: Regime,
): PictogramCode[] {
  if (regime !== 'eu-clp') return []
  const bothAsked = (code: PictogramCode) =>
    hazards.some(({ pictograms }) => pictograms.length > 1 && pictograms.includes(code))
  const optional: PictogramCode[] = []
  if (called.has('GHS01')) optional.push('GHS02', 'GHS03')
  if (called.has('GHS02') || called.has('GHS06')) optional.push('GHS04')
  return optional.filter(code => called.has(code) && !bothAsked(code))
}

/** Statement on the left makes those on the right needless. Source: UN GHS 1.4.10.5.3.3; CLP annex I note to table 3.3.5. */
const saysAlready: readonly (readonly [string, string])[] = [
  ['H410', 'H400'],
  ['H411', 'H401'],
  ['H412', 'H402'],
  ['H314', 'H318'],
]

/** The hazard codes a label needs: those another one says already, and doubles, are left out. The order is kept. */
export function statementsNeeded(codes: readonly string[]): string[] {
  const all = [...new Set(codes.map(normaliseCode))]
  return all.filter(code => !saysAlready.some(([over, under]) => under === code && all.includes(over)))
}

/**
 * A whole label from the hazard codes of a data sheet. Where a code stands for several categories ("H228") the strictest is
 * taken, and the code comes back under `unsure` until the sheet's own signal word is given: a category that asks for a
 * stronger word than the sheet's is none of its, and then only different pictograms leave a code unsure.
 */
export function labelFromCodes(
  codes: readonly string[],
  regime: Regime,
  sheetWord: SignalWord | 'none' | null = null,
): LabelFromCodes {
  const parts = codes.flatMap(code => normaliseCode(code).split('+'))
  const readings = parts.map(code => ({ code, hazards: fitting(hazardsOfCode(code), sheetWord) }))
  const looks = ({ signalWord, pictograms }: Hazard) =>
    sheetWord === null ? `${signalWord} ${pictograms}` : pictograms.join()
  return {
    ...labelOf(
      readings.flatMap(({ hazards }) => hazards.slice(0, 1)),
      regime,
    ),
    statements: statementsNeeded(codes).map(code => ({ code, text: hazardStatement(code, regime) })),
    unsure: readings.filter(({ hazards }) => new Set(hazards.map(looks)).size > 1).map(({ code }) => code),
  }
}

/** The categories that ask for no stronger word than the sheet's; all where none does, since then the two disagree. */
function fitting(hazards: Hazard[], sheetWord: SignalWord | 'none' | null): Hazard[] {
  if (sheetWord === null) return hazards
  const fit = hazards.filter(
    ({ signalWord }) =>
      signalWord === null || signalWordOf([signalWord, wordOf(sheetWord)]) === wordOf(sheetWord),
  )
  return fit.length > 0 ? fit : hazards
}

function wordOf(sheetWord: SignalWord | 'none'): SignalWord | null {
  return sheetWord === 'none' ? null : sheetWord
}
