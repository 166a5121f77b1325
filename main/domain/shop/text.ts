import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

/** Text as it is kept: trimmed, with single spaces. Refuses none at all and more than `most` characters. */
export function checkText(text: string, field: string, what: string, most = 120): string {
  const kept = text.trim().replaceAll(/\s+/gu, ' ')
  if (kept === '') refuse('text-missing', { [field]: text }, say('{what} is missing; write one.', { what }))
  if (kept.length > most)
    refuse(
      'text-long',
      { [field]: text },
      say('{what} has {kept} characters; shorten it to {most} or fewer.', { what, kept: kept.length, most }),
    )
  return kept
}

/** Text that may be left out, trimmed. Lines are kept. Refuses more than `most` characters. */
export function checkNote(text: string, field: string, most = 2_000): string {
  const kept = text.trim()
  if (kept.length > most)
    refuse(
      'text-long',
      { [field]: text },
      say('This note has {kept} characters; shorten it to {most} or fewer.', { kept: kept.length, most }),
    )
  return kept
}

/** Refuses a name that another of the same list bears, capitals aside: two bays of one name cannot be told apart. */
export function checkUnique(names: readonly string[], field: (index: number) => string, what: string): void {
  const seen = new Map<string, number>()
  names.forEach((name, i) => {
    const folded = name.toLowerCase()
    if (seen.has(folded))
      refuse(
        'name-twice',
        { [field(i)]: name },
        say('There is already {what} called "{name}"; add something that tells them apart.', { what, name }),
      )
    seen.set(folded, i)
  })
}
