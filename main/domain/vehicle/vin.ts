import { say } from '../language/index.ts'

/**
 * Vehicle identification numbers. Nothing here decodes a maker; the number is checked, and its year read.
 * Sources: 49 CFR 565.13(g) and 565.15 (characters, check digit, year), ISO 3779 (17 characters), ISO 3780 (first character).
 */

/** 49 CFR 565.15 table III: what each letter counts as; digits count as themselves. I, O and Q are not used. */
const letterValues: Readonly<Record<string, number>> = {
  A: 1,
  B: 2,
  C: 3,
  D: 4,
  E: 5,
  F: 6,
  G: 7,
  H: 8,
  J: 1,
  K: 2,
  L: 3,
  M: 4,
  N: 5,
  P: 7,
  R: 9,
  S: 2,
  T: 3,
  U: 4,
  V: 5,
  W: 6,
  X: 7,
  Y: 8,
  Z: 9,
}

/** 49 CFR 565.15 table IV: the weight of each position; the check digit's own is 0. */
const weights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2]

/** 49 CFR 565.15 table VII: year codes from 1980 on; 30 of them, then they begin again. */
const yearCodes = 'ABCDEFGHJKLMNPRSTVWXY123456789'

export interface VinProblem {
  readonly code: 'length' | 'letter' | 'character'
  /** The character that is not allowed, or how many there are. */
  readonly found: string
  readonly message: string
}

export type VinRegion = 'Africa' | 'Asia' | 'Europe' | 'North America' | 'Oceania' | 'South America'

export interface VinCheck {
  /** As it is stored: capitals, no separators. */
  readonly vin: string
  /** Why this cannot be a VIN at all; empty when it can. */
  readonly problems: readonly VinProblem[]
  /** The rest is null while there are problems. */
  readonly weightedSum: number | null
  readonly remainder: number | null
  /** What position 9 should hold. */
  readonly checkDigit: string | null
  /** Whether it can be a VIN and position 9 holds its check digit. */
  readonly valid: boolean
  /**
   * A sentence when the check digit fails. A warning only: the digit is required of vehicles sold in North America, and
   * elsewhere position 9 may hold anything.
   */
  readonly warning: string | null
}

/**
 * Capitals without hyphens and spaces. Inner separators are taken out only where 17 characters remain, so that a space
 * typed in place of a character is still seen.
 */
export function normaliseVin(text: string): string {
  const capitals = text.normalize('NFKC').trim().toUpperCase()
  const bare = capitals.replaceAll(/[\s-]/gu, '')
  return bare.length === 17 ? bare : capitals
}

/**
 * Checks a VIN's length, characters and check digit, and says what is wrong.
 *
 * @example checkVin('1M8GDM9AXKP042788').valid // true
 */
export function checkVin(text: string): VinCheck {
  const vin = normaliseVin(text)
  const problems = problemsOf(vin)
  if (problems.length > 0)
    return {
      vin,
      problems,
      weightedSum: null,
      remainder: null,
      checkDigit: null,
      valid: false,
      warning: null,
    }
  const weightedSum = [...vin].reduce(
    (sum, character, i) => sum + weights[i]! * (letterValues[character] ?? Number(character)),
    0,
  )
  const remainder = weightedSum % 11
  const checkDigit = remainder === 10 ? 'X' : String(remainder)
  const valid = vin[8] === checkDigit
  return {
    vin,
    problems,
    weightedSum,
    remainder,
    checkDigit,
    valid,
    warning: valid ? null : warningFor(vin, checkDigit),
  }
}

function problemsOf(vin: string): VinProblem[] {
  const problems: VinProblem[] = []
  const count = [...vin].length
  if (count !== 17)
    problems.push({
      code: 'length',
      found: String(count),
      message: say(
        'A VIN has 17 characters; this has {count}. Older vehicles may have another serial number: keep it in the notes.',
        { count },
      ),
    })
  for (const character of new Set(vin)) {
    if ('IOQ'.includes(character))
      problems.push({
        code: 'letter',
        found: character,
        message: say(
          'I, O and Q are not used in a VIN; read the {character} again (1 for I, 0 for O and Q).',
          { character },
        ),
      })
    else if (!/^[A-Z0-9]$/.test(character))
      problems.push({
        code: 'character',
        found: character,
        message: say('"{character}" cannot stand in a VIN; only letters and digits can.', { character }),
      })
  }
  return problems
}

function warningFor(vin: string, checkDigit: string): string {
  return vinRegion(vin[0]!) === 'North America'
    ? say(
        'Position 9 is {vin}, but the check digit comes to {checkDigit}: a character is probably misread.',
        { vin: vin[8], checkDigit },
      )
    : say(
        'Position 9 is {vin}, not the check digit {checkDigit}. Only vehicles sold in North America need one; read it again.',
        { vin: vin[8], checkDigit },
      )
}

/**
 * The two model years a year code (position 10) can mean, 30 years apart, or null for a character that is no year code
 * (I, O, Q, U, Z, 0).
 */
export function modelYears(code: string): readonly [number, number] | null {
  const index = code.length === 1 ? yearCodes.indexOf(code) : -1
  return index < 0 ? null : [1980 + index, 2010 + index]
}

/**
 * The model year of a VIN: position 7 a digit means the first cycle (to 2009), a letter the second. That holds for
 * passenger cars, and for multipurpose vehicles and trucks up to 4536 kg; for others and outside North America it is a
 * guess, so `otherYear` comes with it. Null where position 10 is no year code or the VIN has problems.
 * Source: 49 CFR 565.15(d) table VII and its footnote on position 7.
 */
export function modelYearOf(text: string): { year: number; otherYear: number } | null {
  const { vin, problems } = checkVin(text)
  const years = problems.length === 0 ? modelYears(vin[9]!) : null
  if (!years) return null
  const [first, second] = years
  return /\d/.test(vin[6]!) ? { year: first, otherYear: second } : { year: second, otherYear: first }
}

/**
 * The region of the first character, null where editions of the standard differ (D to H, 0, 7).
 * Source: ISO 3780, from memory.
 */
export function vinRegion(firstCharacter: string): VinRegion | null {
  if (/^[ABC]$/.test(firstCharacter)) return 'Africa'
  if (/^[JKLMNPR]$/.test(firstCharacter)) return 'Asia'
  if (/^[S-Z]$/.test(firstCharacter)) return 'Europe'
  if (/^[1-5]$/.test(firstCharacter)) return 'North America'
  if (firstCharacter === '6') return 'Oceania'
  if (/^[89]$/.test(firstCharacter)) return 'South America'
  return null
}
