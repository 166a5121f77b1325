/**
 * GTINs, the numbers under bar codes: 8, 12, 13 or 14 digits, the last a check digit (GS1 General Specifications, modulo
 * 10 with weights 3 and 1 from the right; rule from memory). Kept as 14 digits, so that one product has one number
 * whichever symbol it was read from.
 */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

const LENGTHS = [8, 12, 13, 14]

/** The check digit that belongs to the digits before it. */
export function checkDigitOf(digits: string): number {
  let sum = 0
  for (let i = 0; i < digits.length; i++) sum += Number(digits[digits.length - 1 - i]) * (i % 2 === 0 ? 3 : 1)
  return (10 - (sum % 10)) % 10
}

export function isGtin(code: string): boolean {
  if (!/^\d+$/.test(code) || !LENGTHS.includes(code.length)) return false
  return checkDigitOf(code.slice(0, -1)) === Number(code.at(-1))
}

/** The 14-digit form. Refuses a wrong length or check digit, naming the digit that would fit. */
export function readGtin(text: string, field = 'code'): string {
  const code = text.replace(/[\s-]/g, '')
  if (!/^\d+$/.test(code) || !LENGTHS.includes(code.length))
    refuse(
      'gtin-length',
      { [field]: text },
      say('"{text}" is not a GTIN; it has 8, 12, 13 or 14 digits.', { text }),
    )
  const check = checkDigitOf(code.slice(0, -1))
  if (check !== Number(code.at(-1)))
    refuse(
      'gtin-check-digit',
      { [field]: text },
      say('The last digit of {text} should be {check}: one digit was misread; scan again or type it anew.', {
        text,
        check,
      }),
    )
  return code.padStart(14, '0')
}
