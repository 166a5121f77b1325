// UN GHS, CLP annexes I, III, IV and article 26, 29 CFR 1910.1200 C.2; storage groups are
// common practice, no source. What was recalled and not looked up is marked "from memory" with each case.
import { expect } from 'vitest'
import { hazardsOfCode } from '../../../main/domain/hazard/classes.ts'
import {
  hazardStatement,
  labelFromCodes,
  type PictogramCode,
  pictogram,
  precautionaryStatement,
  type Regime,
  type SignalWord,
  type StorageGroup,
} from '../../../main/domain/hazard/index.ts'
import { labelOf, signalWordOf, statementsNeeded } from '../../../main/domain/hazard/label.ts'
import { whyApart } from '../../../main/domain/hazard/storage.ts'
import { type Case, runCases } from '../../reference/cases.ts'
import { hazardNamed } from './hazardNamed.ts'

const firstSet = [
  [/^H\d/, 'hazard-statement'],
  [/^label-/, 'label-from-statements'],
  [/^store-/, 'storage'],
] as const

interface StatementExpected {
  statement?: string
  text?: string
  category?: string
  class?: string
  pictogram: PictogramCode | null
  signalWord: SignalWord | null
}

/** The group each published description falls under, by hand. */
const groupOf: Readonly<Record<string, StorageGroup>> = {
  'acid wheel cleaner': 'acid',
  acid: 'acid',
  'chlorine bleach': 'bleach',
  'alkaline wash': 'alkali',
  oxidiser: 'oxidiser',
  'flammable solvent': 'flammable',
  'pH-neutral wash': 'general',
}

runCases('hazard', firstSet, {
  'hazard-statement': (entry: Case<{ code: string }, StatementExpected>) => {
    const { code } = entry.input
    const { statement, text, category, class: className, pictogram: shown, signalWord } = entry.expected
    // The first set follows the UN's own wording, the second CLP's.
    expect(hazardStatement(code, statement ? 'un-ghs' : 'eu-clp')).toBe(statement ?? text)
    // The first set names a category with its subdivisions as one: "Carc. 1" is "Carc. 1A or 1B".
    const named = hazardsOfCode(code).filter(hazard =>
      [hazard.className, hazard.className.replace('1A or 1B', '1')].includes(category ?? className ?? ''),
    )
    expect(named).toMatchObject([{ pictograms: shown ? [shown] : [], signalWord }])
  },

  'precautionary-statement': (entry: Case<{ code: string }, { text: string }>) => {
    expect(precautionaryStatement(entry.input.code)).toBe(entry.expected.text)
  },

  pictogram: (entry: Case<{ code: PictogramCode }, { symbol: string }>) => {
    expect(pictogram(entry.input.code).symbol).toBe(entry.expected.symbol)
  },

  'label-from-statements': (
    entry: Case<{ statements: string[] }, { pictograms: string[]; signalWord: SignalWord | null }>,
  ) => {
    expect(labelFromCodes(entry.input.statements, 'un-ghs')).toMatchObject(entry.expected)
  },

  label: (
    entry: Case<
      { regime: Regime; hazardFor: Record<string, string[]> },
      { pictograms: string[]; signalWord: SignalWord | null; mayDrop?: string[] }
    >,
  ) => {
    const hazards = Object.entries(entry.input.hazardFor).flatMap(([code, reasons]) =>
      reasons.map(reason => {
        const hazard = hazardNamed(reason)
        expect(hazard.pictograms, reason).toEqual([code])
        return hazard
      }),
    )
    expect(labelOf(hazards, entry.input.regime)).toMatchObject({ mayDrop: [], ...entry.expected })
  },

  'signal-word': (entry: Case<{ signalWords: (SignalWord | null)[] }, { signalWord: SignalWord | null }>) => {
    expect(signalWordOf(entry.input.signalWords)).toBe(entry.expected.signalWord)
  },

  'statements-may-be-left-out': (entry: Case<{ statements: string[] }, { label: string[] }>) => {
    expect(statementsNeeded(entry.input.statements).sort()).toEqual(entry.expected.label.sort())
  },

  storage: (entry: Case<{ groups: [string, string] }, { warn: boolean }>) => {
    const [a, b] = entry.input.groups.map(words => groupOf[words])
    expect(whyApart(a!, b!) !== null).toBe(entry.expected.warn)
    expect(whyApart(b!, a!)).toBe(whyApart(a!, b!))
  },
})
