/**
 * Whose rules a label follows: the UN system itself, the European regulation (CLP), or the US workplace standard
 * (29 CFR 1910.1200). Codes are the same; spelling and some precedence rules differ.
 */
export type Regime = 'un-ghs' | 'eu-clp' | 'us-osha'

/** A statement in the spelling of a regime; texts are kept as CLP spells them. */
export function spelled(text: string, regime: Regime): string {
  if (regime === 'eu-clp') return text
  const un = text
    .replaceAll('oxidiser', 'oxidizer')
    .replaceAll('desensitising', 'desensitizing')
    .replaceAll('desensitised', 'desensitized')
    .replace('Pressurised container: May', 'Pressurized container: may')
  return regime === 'us-osha' ? un.replaceAll('vapour', 'vapor') : un
}

/** A code as it is looked up: "P301 + P310" and "p301+p310" are "P301+P310"; "H300+310" is "H300+H310". */
export function normaliseCode(code: string): string {
  const [first = '', ...rest] = code.replaceAll(/\s/g, '').split('+')
  const letter = first[0]?.toUpperCase() ?? ''
  const begin = letter === 'E' ? `EUH${first.slice(3).toUpperCase()}` : letter + first.slice(1)
  return [
    begin,
    ...rest.map(part => (/^\d/.test(part) ? letter + part : part[0]?.toUpperCase() + part.slice(1))),
  ].join('+')
}
