// 49 CFR 565.13(g) and 565.15, ISO 3779, ISO 3780 (regions from memory); only sample and invented numbers.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkVin } from '../../../main/domain/vehicle/index.ts'
import { modelYearOf, modelYears, normaliseVin, vinRegion } from '../../../main/domain/vehicle/vin.ts'
import { type Case, runCases, setAside } from '../../reference/cases.ts'

const firstSet = [
  [/^made-/, 'check-digit'],
  [/^bad-/, 'problem'],
  [/^year-/, 'model-year'],
] as const

const errorWords = { length: '17 characters', letter: 'I, O and Q are not used' }

function expectError(entry: Case<{ vin: string }, { error: string }>, code: keyof typeof errorWords) {
  const check = checkVin(entry.input.vin)
  expect(check.valid).toBe(false)
  expect(check.problems.map(problem => problem.code)).toEqual([code])
  expect(entry.expected.error).toBe(errorWords[code])
}

runCases('vin', firstSet, {
  'check-digit': (
    entry: Case<
      { vin: string },
      { valid: boolean; checkDigit: string; weightedSum?: number; remainder?: number }
    >,
  ) => {
    const check = checkVin(entry.input.vin)
    expect(check).toMatchObject(entry.expected)
    expect(check.problems).toEqual([])
    expect(check.warning === null).toBe(entry.expected.valid)
  },

  problem: (entry: Case<{ vin: string }, { valid: boolean; problem: string }>) => {
    const check = checkVin(entry.input.vin)
    expect(check.valid).toBe(entry.expected.valid)
    const [problem] = check.problems
    expect(problem!.code === 'letter' ? `letter ${problem!.found}` : problem!.code).toBe(
      entry.expected.problem,
    )
  },

  characters: (entry: Case<{ vin: string }, { error: string }>) => expectError(entry, 'letter'),
  length: (entry: Case<{ vin: string }, { error: string }>) => expectError(entry, 'length'),

  normalise: (entry: Case<{ vin: string }, { vin: string; valid: boolean }>) => {
    expect(checkVin(entry.input.vin)).toMatchObject(entry.expected)
  },

  'model-year': (
    entry: Case<
      { code?: string; position10?: string },
      { years?: number[]; position7Digit?: number; position7Letter?: number; error?: string; rule?: string }
    >,
  ) => {
    const { years, position7Digit, position7Letter, error, rule } = entry.expected
    setAside(rule, 'words; what they say of position 7 is held below')
    const code = (entry.input.code ?? entry.input.position10)!
    expect(modelYears(code)).toEqual(error ? null : (years ?? [position7Digit, position7Letter]))
    // The same through a whole number: position 7 a digit, then a letter.
    const vinWith = (seventh: string) => `1A2B3C${seventh}D0${code}A123456`
    expect(modelYearOf(vinWith('4'))?.year ?? null).toBe(error ? null : (years?.[0] ?? position7Digit))
    expect(modelYearOf(vinWith('K'))?.year ?? null).toBe(error ? null : (years?.[1] ?? position7Letter))
  },

  region: (entry: Case<{ firstCharacter: string }, { region: string }>) => {
    expect(vinRegion(entry.input.firstCharacter)).toBe(entry.expected.region)
  },
})

const character = fc.constantFrom(...'ABCDEFGHJKLMNPRSTUVWXYZ0123456789')
const sound = fc.array(character, { minLength: 17, maxLength: 17 }).map(list => {
  const { checkDigit } = checkVin(list.join(''))
  return list.with(8, checkDigit!).join('')
})

describe('the check digit', () => {
  it('catches every single misread digit, and most misread letters', () => {
    // Values run 1 to 9 and weights 2 to 10, none divisible by 11, so that two characters of different value never agree.
    fc.assert(
      fc.property(sound, fc.nat(16), character, (vin, at, other) => {
        const changed = [...vin].with(at, other).join('')
        const value = (c: string) => checkVin(`${c}${'0'.repeat(16)}`).weightedSum! / 8
        if (at !== 8 && value(other) !== value(vin[at]!)) expect(checkVin(changed).valid).toBe(false)
        if (at === 8 && other !== vin[8]) expect(checkVin(changed).valid).toBe(false)
      }),
    )
  })

  it('does not mind case, hyphens or spaces around and between', () => {
    fc.assert(
      fc.property(
        sound,
        fc.constantFrom(' ', '-', ' - '),
        fc.integer({ min: 1, max: 16 }),
        (vin, mark, at) => {
          const typed = ` ${vin.slice(0, at)}${mark}${vin.slice(at)} `.toLowerCase()
          expect(normaliseVin(typed)).toBe(vin)
        },
      ),
    )
  })

  it('warns more firmly where the number was given out in North America', () => {
    expect(checkVin('1A2B3C4D0EA123456').warning).toContain('probably misread')
    expect(checkVin('WA2B3C4D0EA123456').warning).toContain('Only vehicles sold in North America')
  })
})

it('leaves the region open where editions of the standard differ', () => {
  expect([...'DEFGH07IOQ'].map(first => vinRegion(first))).toEqual(Array(10).fill(null))
})
