import { firstIndex } from '../calendar/index.ts'
import { foldText, looseKey } from '../vehicle/index.ts'
import { slipsBetween } from './editDistance.ts'
import { type Entry, entryOf, type Findable, fitOf, formsOf, type Typed, typedOf, wholeOf } from './entry.ts'

/** What a word that does not fit costs: more than any text may hold words. */
const noFit = 1_000_000

/** A word with a slip comes after every word without. */
const slipCost = 4

const byName = new Intl.Collator('en', { sensitivity: 'base', numeric: true })

/**
 * Everybody in memory, to be looked through at each key: twenty thousand people are two million letters, which are read
 * in a few milliseconds, faster than an index of theirs could be kept and asked.
 */
export class PeopleIndex {
  /** By name, then by id. */
  readonly #entries: Entry[] = []
  readonly #byId = new Map<string, Entry>()
  /** Every word of the names and cars, with how many entries have it and which letters are in it. */
  readonly #words = new Map<string, { count: number; letters: number }>()

  /** All there is to be typed as one text, which is read at memory's speed; made anew after a change. */
  #text: { whole: string; starts: number[] } | null = null

  constructor(people: Iterable<Findable> = []) {
    for (const person of people) this.#know(entryOf(person))
    this.#entries.push(...[...this.#byId.values()].sort(inOrder))
  }

  /** Adds somebody, or replaces what was known of them. */
  put(person: Findable): void {
    this.drop(person.id)
    const entry = entryOf(person)
    this.#know(entry)
    this.#text = null
    this.#entries.splice(this.#placeOf(entry), 0, entry)
  }

  drop(id: string): void {
    const entry = this.#byId.get(id)
    if (!entry) return
    this.#byId.delete(id)
    this.#text = null
    this.#entries.splice(this.#placeOf(entry), 1)
    for (const word of new Set(entry.words)) {
      const known = this.#words.get(word)!
      if (--known.count === 0) this.#words.delete(word)
    }
  }

  /**
   * The ids of those whom every word typed fits, the best first, then by name; all of them for an empty text. Where that
   * is nobody, words of four letters or more may have a slip of the hand, of eight or more two. Put away ones
   * only if `archived`.
   */
  find(text: string, archived = false): string[] {
    const words = foldText(text).split(' ').filter(Boolean)
    if (words.length === 0)
      return this.#entries.filter(each => archived || !each.archived).map(({ id }) => id)
    const exact = this.#rank(words, archived)
    if (exact.length > 0) return exact
    // "030 901 820" is one number.
    const whole = words.length > 1 ? this.#rank([looseKey(text).toLowerCase()], archived) : []
    if (whole.length > 0 || !words.some(mayHaveSlip)) return whole
    return this.#rank(
      words,
      archived,
      words.map(word => this.#slipsOf(word)),
    )
  }

  #rank(words: readonly string[], archived: boolean, slips: readonly Slips[] = []): string[] {
    const typed = words.map(typedOf)
    // Whoever has the longest word is looked at for the others.
    const longest = words.reduce((best, word, i) => (word.length > words[best]!.length ? i : best), 0)
    const found: { id: string; cost: number }[] = []
    for (const entry of this.#entriesWith([...formsOf(typed[longest]!), ...(slips[longest]?.keys() ?? [])])) {
      const cost = entry.archived && !archived ? noFit : costOf(entry, typed, slips)
      if (cost < noFit) found.push({ id: entry.id, cost })
    }
    // The sort is stable: equals stay in the order of their names.
    return found.sort((a, b) => a.cost - b.cost).map(({ id }) => id)
  }

  /** The entries in which one of the forms stands, in their order. */
  #entriesWith(forms: readonly string[]): Entry[] {
    this.#text ??= textOf(this.#entries)
    const { whole, starts } = this.#text
    const places = new Set<number>()
    for (const form of new Set(forms))
      for (let at = whole.indexOf(form); at >= 0; ) {
        const place = firstIndex(starts.length, each => starts[each]! > at) - 1
        places.add(place)
        // Once is enough: on with the next entry.
        at = place + 1 < starts.length ? whole.indexOf(form, starts[place + 1]!) : -1
      }
    return [...places].sort((a, b) => a - b).map(place => this.#entries[place]!)
  }

  #know(entry: Entry): void {
    this.#byId.set(entry.id, entry)
    for (const word of new Set(entry.words)) {
      const known = this.#words.get(word)
      if (known) known.count++
      else this.#words.set(word, { count: 1, letters: lettersOf(word) })
    }
  }

  /** Where an entry stands, or would. */
  #placeOf(entry: Entry): number {
    return firstIndex(this.#entries.length, at => inOrder(this.#entries[at]!, entry) >= 0)
  }

  #slipsOf(word: string): Slips {
    const slips = new Map<string, number>()
    if (!mayHaveSlip(word)) return slips
    const most = word.length >= 8 ? 2 : 1
    const mine = lettersOf(word)
    for (const [known, { letters }] of this.#words) {
      // A slip puts at most one letter in another's place: most words are out by their letters alone.
      if (bitsOf(mine ^ letters) > 2 * most) continue
      const distance = slipsBetween(word, known, most)
      if (distance) slips.set(known, distance)
    }
    return slips
  }
}

/** The known words a typed one may have been meant for, with how many slips apart they are. */
type Slips = ReadonlyMap<string, number>

function textOf(entries: readonly Entry[]): { whole: string; starts: number[] } {
  const texts = entries.map(wholeOf)
  let at = 0
  const starts = texts.map(text => {
    at += text.length
    return at - text.length
  })
  return { whole: texts.join(''), starts }
}

/** The letters of a word as bits, some of them sharing one. */
function lettersOf(word: string): number {
  let bits = 0
  for (let i = 0; i < word.length; i++) bits |= 1 << (word.charCodeAt(i) % 32)
  return bits
}

function bitsOf(value: number): number {
  let count = 0
  for (let rest = value; rest !== 0; rest &= rest - 1) count++
  return count
}

const mayHaveSlip = (word: string) => word.length >= 4 && !/\d/.test(word)

const inOrder = (a: Entry, b: Entry) =>
  byName.compare(a.name, b.name) || (a.id < b.id ? -1 : Number(a.id > b.id))

function costOf(entry: Entry, typed: readonly Typed[], slips: readonly Slips[]): number {
  let sum = 0
  for (const [i, word] of typed.entries()) {
    const fit = fitOf(entry, word)
    if (fit !== null) {
      sum += fit
      continue
    }
    let fewest = noFit
    const meant = slips[i]
    if (meant) for (const each of entry.words) fewest = Math.min(fewest, meant.get(each) ?? noFit)
    if (fewest === noFit) return noFit
    sum += slipCost + fewest
  }
  return sum
}
