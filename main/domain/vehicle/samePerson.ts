/** What is known of a person at the desk. `phone` is E.164. */
export interface Person {
  readonly name: string
  readonly phone: string | null
  readonly email: string | null
}

/** Small letters without accents, single spaces: two texts that are alike to whoever types them in a hurry. */
export function foldText(text: string): string {
  return text.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase().replaceAll(/\s+/gu, ' ').trim()
}

/**
 * Whether two entries are likely one person: names alike, and the same phone or e-mail address, or one of the two has
 * left neither. Common practice, no source: two people of one name do exist, so this is a reason to ask, not to refuse.
 */
export function likelySame(a: Person, b: Person): boolean {
  if (foldText(a.name) !== foldText(b.name)) return false
  const samePhone = a.phone !== null && a.phone === b.phone
  const sameMail = a.email !== null && a.email.toLowerCase() === b.email?.toLowerCase()
  const reachable = (person: Person) => person.phone !== null || person.email !== null
  return samePhone || sameMail || !reachable(a) || !reachable(b)
}

/**
 * Whether an entry is worth a look before a new one is made: names alike, or the same phone or e-mail address. Common
 * practice, no source: families share a phone, so it is shown and decides nothing.
 */
export function worthALook(typed: Person, other: Person): boolean {
  const named = foldText(typed.name)
  const sameMail = typed.email !== null && typed.email.toLowerCase() === other.email?.toLowerCase()
  return (
    (named !== '' && named === foldText(other.name)) ||
    (typed.phone !== null && typed.phone === other.phone) ||
    sameMail
  )
}
