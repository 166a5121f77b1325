import { looseKey, nameKey } from '../vehicle/index.ts'
import { slipsBetween } from './editDistance.ts'

/** What is typed of somebody so far, or known of somebody on file. Phones are E.164; a car has its plate or VIN or both. */
export interface Marks {
  readonly name: string
  readonly phones: readonly string[]
  readonly emails: readonly string[]
  readonly plates: readonly string[]
  readonly vins: readonly string[]
}

export type Likeness = 'plate' | 'VIN' | 'phone' | 'e-mail' | 'name' | 'much the same name'

/**
 * What speaks for two entries being of one person, the strongest first; empty where nothing does. Names count in any
 * order, accents and capitals aside; a slip of the hand is said as such. Common practice, no source: families share a
 * phone and two people a name, so this is shown and decides nothing.
 */
export function likeness(typed: Marks, known: Marks): Likeness[] {
  const shares = (mine: readonly string[], theirs: readonly string[], key: (text: string) => string) => {
    const keys = new Set(theirs.map(key).filter(Boolean))
    return mine.some(each => keys.has(key(each)))
  }
  const lower = (text: string) => text.toLowerCase()
  const found: Likeness[] = []
  if (shares(typed.plates, known.plates, looseKey)) found.push('plate')
  if (shares(typed.vins, known.vins, looseKey)) found.push('VIN')
  if (shares(typed.phones, known.phones, lower)) found.push('phone')
  if (shares(typed.emails, known.emails, lower)) found.push('e-mail')
  const [mine, theirs] = [nameKey(typed.name), nameKey(known.name)]
  if (mine !== '' && mine === theirs) found.push('name')
  // A short name is another name after one slip: "Ana" is not "Ada".
  else if (mine.length >= 7 && slipsBetween(mine, theirs, mine.length >= 12 ? 2 : 1) !== null)
    found.push('much the same name')
  return found
}

const weights: Readonly<Record<Likeness, number>> = {
  plate: 8,
  VIN: 8,
  phone: 4,
  'e-mail': 4,
  name: 3,
  'much the same name': 1,
}

/** How much speaks for it, to put the likeliest first. */
export function likelihood(found: readonly Likeness[]): number {
  return found.reduce((sum, each) => sum + weights[each], 0)
}
