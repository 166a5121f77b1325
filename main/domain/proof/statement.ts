/** What a certificate states, section by section, and the text whose digest is signed. */

export interface StatementSection {
  title: string
  facts: readonly (readonly [name: string, words: string])[]
}

/**
 * The statement as one text, a fact a line: what is hashed, and what anybody can type off the paper. Letters are
 * composed (NFC), blanks count as one, empty facts are left out, so that what looks the same is the same.
 */
export function statementText(sections: readonly StatementSection[]): string {
  return sections
    .flatMap(({ title, facts }) => [
      `# ${plain(title)}`,
      ...facts
        .filter(([, words]) => plain(words) !== '')
        .map(([name, words]) => `${plain(name)}: ${plain(words)}`),
    ])
    .map(line => `${line}\n`)
    .join('')
}

/** A statement that was typed, pasted or read from a file, brought to the same form. */
export function readStatement(text: string): string {
  return text
    .split(/\r?\n/)
    .map(plain)
    .filter(line => line !== '')
    .map(line => `${line}\n`)
    .join('')
}

const plain = (words: string) => words.normalize('NFC').replaceAll(/\s+/g, ' ').trim()

const months = 'January February March April May June July August September October November December'.split(
  ' ',
)

/** A moment for good, year and all, in words that no library changes: `15 April 2026, 09:40`. */
export function momentForGood(at: number, zone: string): string {
  const { year, month, day, hour, minute } = Temporal.Instant.fromEpochMilliseconds(
    at * 60_000,
  ).toZonedDateTimeISO(zone)
  const two = (figure: number) => String(figure).padStart(2, '0')
  return `${day} ${months[month - 1]} ${year}, ${two(hour)}:${two(minute)}`
}
