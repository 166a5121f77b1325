import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

/** "UN1263" from "un 1263", "UN-1263" or "1263"; refuses what is not a number of four digits. */
export function readUnNumber(text: string, field = 'unNumber'): string {
  const digits = /^(?:UN|ID)?[\s-]*(\d{4})$/i.exec(text.trim())?.[1]
  if (!digits)
    refuse(
      'un-number-bad',
      { [field]: text },
      say(
        '"{text}" is not a UN number; copy the four digits from section 14 of the data sheet, such as UN1263.',
        { text },
      ),
    )
  return `UN${digits}`
}
