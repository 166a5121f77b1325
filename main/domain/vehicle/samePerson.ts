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

/** The words of a name, folded, without signs and in one order: "Ångström, Zoë" and "zoe angstrom" have one key. */
export function nameKey(name: string): string {
  return foldText(name)
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)
    .sort()
    .join(' ')
}

/**
 * Whether two entries are likely one person: names alike, and the same phone or e-mail address, or one of the two has
 * left neither. Common practice, no source: two people of one name do exist, so this is a reason to ask, not to refuse.
 */
export function likelySame(a: Person, b: Person): boolean {
  if (nameKey(a.name) !== nameKey(b.name)) return false
  const samePhone = a.phone !== null && a.phone === b.phone
  const sameMail = a.email !== null && a.email.toLowerCase() === b.email?.toLowerCase()
  const reachable = (person: Person) => person.phone !== null || person.email !== null
  return samePhone || sameMail || !reachable(a) || !reachable(b)
}
