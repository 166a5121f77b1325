import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'

/**
 * What must never stand in a mail header: line ends and every other control sign, since a line end there begins a new
 * header, a copy to a stranger for one (RFC 5322 section 2.2; CWE-93). The Unicode line ends are held out as well,
 * because somebody further on may take them for one.
 */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it looks for
const UNSAFE = /[\u0000-\u001f\u007f-\u009f\u2028\u2029]/

/** Why a text may not stand in a header; null when it may. */
export function headerProblem(text: string): string | null {
  const found = UNSAFE.exec(text)
  if (!found) return null
  const code = found[0].charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')
  return say('It holds a line end or control sign (U+{code}), which no name, subject or address may.', {
    code,
  })
}

/** Refuses a text no header may hold. */
export function checkHeaderText(text: string, field: string): void {
  const problem = headerProblem(text)
  if (problem) refuse('header-unsafe', { [field]: text }, problem)
}
