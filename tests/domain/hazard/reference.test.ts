// UN GHS, CLP annexes I, III, IV and article 26, 29 CFR 1910.1200 C.2, NIOSH 94-110, UN Model Regulations; storage groups
// are common practice, no source. What was recalled and not looked up is marked "from memory" with each case.
import { expect } from 'vitest'
import {
  asymmetryMultiplier,
  distanceMultiplier,
  hazardNamed,
  hazardStatement,
  hazardsOfCode,
  horizontalMultiplier,
  type Lift,
  labelFromCodes,
  labelOf,
  liftAdvice,
  type PictogramCode,
  pictogram,
  precautionaryStatement,
  type Regime,
  type SignalWord,
  signalWordOf,
  statementsNeeded,
  storageGroupNamed,
  transportEntry,
  verticalMultiplier,
  whyApart,
} from '../../../main/domain/hazard/index.ts'
import { type Case, expectNear, runCases } from '../../reference/cases.ts'

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
    const [a, b] = entry.input.groups.map(words => storageGroupNamed(words))
    expect(whyApart(a!, b!) !== null).toBe(entry.expected.warn)
    expect(whyApart(b!, a!)).toBe(whyApart(a!, b!))
  },

  lifting: (entry: Case<Lift, Record<string, number | null>>) => {
    const advice: Record<string, number | null> = { ...liftAdvice(entry.input) }
    for (const [name, value] of Object.entries(entry.expected)) {
      if (value === null) expect(advice[name], name).toBeNull()
      else expectNear(advice[name]!, value, entry.tolerance)
    }
  },

  'lifting-multiplier': (
    entry: Case<{ name: 'HM' | 'VM' | 'DM' | 'AM'; cm?: number; degrees?: number }, { value: number }>,
  ) => {
    const multiplier = {
      HM: horizontalMultiplier,
      VM: verticalMultiplier,
      DM: distanceMultiplier,
      AM: asymmetryMultiplier,
    }[entry.input.name]
    expectNear(multiplier((entry.input.cm ?? entry.input.degrees)!), entry.expected.value, entry.tolerance)
  },

  'un-number': (entry: Case<{ number: string; packingGroup?: string }, Record<string, string | null>>) => {
    expect(transportEntry(entry.input.number, entry.input.packingGroup)).toMatchObject(entry.expected)
  },
})
