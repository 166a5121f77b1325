import { foldText, looseKey } from '../vehicle/index.ts'

/** Who is to be found, and by what. */
export interface Findable {
  readonly id: string
  readonly name: string
  /** Put away: found only where asked for. */
  readonly archived: boolean
  readonly phone: string | null
  readonly email: string | null
  readonly tags?: readonly string[]
  readonly contacts?: readonly {
    readonly name: string
    readonly phone: string | null
    readonly email: string | null
  }[]
  readonly cars: readonly {
    readonly plate: string
    readonly make: string
    readonly model: string
    readonly colour: string
    readonly year: number | null
    readonly vin: string | null
  }[]
}

export interface Entry {
  readonly id: string
  readonly name: string
  readonly archived: boolean
  /** The words of the names, tags and cars, folded; those that are looked for with a slip. */
  readonly words: readonly string[]
  /** Names, addresses, tags and cars, folded. */
  readonly text: string
  /** Digits of the phones, a space between two. */
  readonly digits: string
  /** Plates and identification numbers, letters and digits, look-alikes made one; a space before and after each. */
  readonly keys: string
}

/** What is looked at of somebody while somebody types. */
export function entryOf(person: Findable): Entry {
  const cars = person.cars.map(car => [car.make, car.model, car.colour, car.year ?? ''].join(' '))
  const { contacts = [], tags = [] } = person
  const words = foldText([person.name, ...contacts.map(({ name }) => name), ...tags, ...cars].join(' '))
  const emails = [person.email, ...contacts.map(({ email }) => email)].filter(each => each !== null)
  return {
    id: person.id,
    name: person.name,
    archived: person.archived,
    words: words.split(' ').filter(Boolean),
    text: `${words} ${foldText(emails.join(' '))}`,
    digits: [person.phone, ...contacts.map(({ phone }) => phone)]
      .map(phone => phone?.replaceAll(/\D/g, '') ?? '')
      .filter(Boolean)
      .join(' '),
    keys: ` ${person.cars
      .flatMap(car => [car.plate, car.vin ?? ''])
      .map(keyOf)
      .filter(Boolean)
      .join('  ')} `,
  }
}

const keyOf = (text: string) => looseKey(text).toLowerCase()

/** All of an entry that may be typed, as one text. */
export const wholeOf = ({ text, digits, keys }: Entry) => `${text}\n${digits}\n${keys}\n`

/** A word somebody typed, in the forms it is looked for in. */
export interface Typed {
  readonly word: string
  /** As a plate or a part of one; empty where it is too short to tell any. */
  readonly key: string
  /** As a part of a phone number; none where it holds a letter or is too short. */
  readonly digits: readonly string[]
  /** One or two digits are in half of all model years and addresses; only a plate is worth finding by them. */
  readonly onlyKey: boolean
}

export function typedOf(word: string): Typed {
  const key = keyOf(word)
  const digits = /\p{L}/u.test(word) ? '' : word.replaceAll(/\D/g, '')
  return {
    word,
    key: key.length > 1 ? key : '',
    // A trunk zero is typed at home but is no part of the international number.
    digits: [digits, digits.replace(/^0+/, '')].filter(part => part.length > 2),
    onlyKey: /^\d{1,2}$/.test(word),
  }
}

/** What of an entry's whole text a word may stand in. */
export function formsOf({ word, key, digits, onlyKey }: Typed): string[] {
  return [onlyKey ? '' : word, key, ...digits].filter(form => form !== '')
}

/**
 * How well a word that was typed fits: 0 a whole word or key, 1 the beginning of one, the end of a key, or a part of
 * the phone, 2 a part of anything; null where it does not.
 */
export function fitOf(entry: Entry, { word, key, digits, onlyKey }: Typed): number | null {
  const inText = !onlyKey && entry.text.includes(word)
  const inKeys = key !== '' && entry.keys.includes(key)
  if (!inText && !inKeys) return digits.some(part => entry.digits.includes(part)) ? 1 : null
  if ((inText && entry.words.includes(word)) || (inKeys && entry.keys.includes(` ${key} `))) return 0
  if (inText && entry.words.some(each => each.startsWith(word))) return 1
  return inKeys && (entry.keys.includes(` ${key}`) || entry.keys.includes(`${key} `)) ? 1 : 2
}
