import type { Findable } from '../../../main/domain/search/entry.ts'
import type { PeopleIndex } from '../../../main/domain/search/index.ts'
import { seeded } from '../../bench/simulation/random.ts'
import { people as invented } from '../../bench/years/people.ts'

export interface Question {
  text: string
  /** Who was meant. */
  id: string
}

/** Invented people by the thousand, and what a desk would type to find some of them. */
export function askedFor(count: number, questions: number): { people: Findable[]; asked: Question[] } {
  const random = seeded(20260415)
  const { owners, cars } = invented(count, 2026, random)
  const carsOf = Map.groupBy(cars, car => car.customerId)
  const people = owners.map(owner => ({
    ...owner,
    archived: false,
    cars: carsOf.get(owner.id) ?? [],
  }))
  const pick = (length: number) => Math.floor(random() * length)
  const swapped = (word: string) => {
    const at = 1 + pick(word.length - 2)
    return word.slice(0, at) + word[at + 1] + word[at] + word.slice(at + 2)
  }
  const missing = (word: string) => {
    const at = 1 + pick(word.length - 2)
    return word.slice(0, at) + word.slice(at + 1)
  }
  const plain = (text: string) => text.normalize('NFKD').replaceAll(/\p{M}/gu, '')
  // Of one name there may be several people: whoever types a slip names the car too, or the name would not tell either.
  const ways: ((person: Findable) => string)[] = [
    person => plain(person.name).toUpperCase(),
    person => person.name.split(' ').reverse().join(' '),
    person => person.phone?.slice(-7) ?? person.name,
    person => person.cars[0]!.plate.toLowerCase().replace(' ', ''),
    person => person.cars[0]!.plate.replaceAll('0', 'O'),
    person => person.cars.find(({ vin }) => vin)?.vin?.slice(-6) ?? person.cars[0]!.plate,
    person => `${swapped(person.name.split(' ')[1]!)} ${person.name.split(' ')[0]}`,
    person => `${person.name.split(' ')[0]} ${missing(person.name.split(' ')[1]!)}`,
    person => `${swapped(person.name.split(' ')[1]!)} ${person.cars[0]!.plate.slice(0, 3)}`,
    person => `${person.name.split(' ')[1]} ${person.cars[0]!.model} ${person.cars[0]!.colour}`,
  ]
  const asked = Array.from({ length: questions }, (_, n) => {
    const person = people[pick(people.length)]!
    return { text: ways[n % ways.length]!(person), id: person.id }
  })
  return { people, asked }
}

/** The share of questions whose person is among the first `most` answers. */
export function recallAt(index: PeopleIndex, asked: readonly Question[], most: number) {
  const missed = asked.filter(({ text, id }) => !index.find(text).slice(0, most).includes(id))
  return {
    recall: (asked.length - missed.length) / asked.length,
    missed: missed.map(({ text }) => text).join(', '),
  }
}
