/** Invented owners and cars by the thousand; no two owners share a number or an address. */
import type { Finish, SizeClass } from '../../../main/domain/shop/index.ts'
import { checkVin } from '../../../main/domain/vehicle/index.ts'
import type { Random } from '../simulation/random.ts'

export interface Owner {
  id: string
  name: string
  phone: string | null
  email: string | null
}

export interface Car {
  id: string
  customerId: string
  plate: string
  make: string
  model: string
  colour: string
  year: number
  vin: string | null
  sizeClass: SizeClass
  finish: Finish
}

const given =
  'Ines Toma Rowan Hana Petra Amadou Clara Jonas Leila Oskar Mirela Samir Greta Nuno Aiko Bram Delia Emre Faye Gil Hester Ivo Juno Kofi Lotte Mads Nadia Orla Pavel Quinn Rosa Stellan Tilda Umar Vera Wim Xenia Yusuf Zora Abel Zoë André Łucja Jürgen'.split(
    ' ',
  )
const starts =
  'Ash Bir Cal Dar El Fen Gar Hol In Jor Kel Lin Mor Nor Or Pel Quis Ros Stel Thor Ul Van Wes Yar Zel'.split(
    ' ',
  )
const middles = 'a e i o u an en il or ur'.split(' ')
const ends = 'by dale den ford ham lund mere mond nor rick set stone ton wick wyn øy'.split(' ')
const makes: readonly (readonly [string, string, SizeClass])[] = [
  ['Marlo', 'Wendrel', 'medium'],
  ['Tervane', 'Tolvey', 'small'],
  ['Oskett', 'Cassowick', 'large'],
  ['Brindle', 'Hollick', 'medium'],
  ['Quillan', 'Perrowin', 'xl'],
  ['Marlo', 'Mirrowen', 'large'],
  ['Tervane', 'Stennary', 'medium'],
]
const colours = ['graphite', 'white', 'deep blue', 'black', 'silver', 'red', 'moss green', 'sand']
const plateLetters = 'ABCDEFGHJKLMNPRSTUVWXY'
const vinCharacters = 'ABCDEFGHJKLMNPRSTUVWXYZ0123456789'

function one<T>(random: Random, list: ArrayLike<T>): T {
  return list[Math.floor(random() * list.length)] as T
}

/** A vehicle identification number with the check digit that belongs to it. */
function vinOf(random: Random): string {
  const vin = Array.from({ length: 17 }, () => one(random, vinCharacters)).join('')
  const { checkDigit } = checkVin(vin)
  return `${vin.slice(0, 8)}${checkDigit}${vin.slice(9)}`
}

/** A firm among so many owners brings so many cars. */
const [ownersAFleet, fleetCars] = [2_000, 40]

/** `count` owners with one car and a half each on average. */
export function people(count: number, thisYear: number, random: Random): { owners: Owner[]; cars: Car[] } {
  const owners: Owner[] = []
  const cars: Car[] = []
  for (let n = 0; n < count; n++) {
    const id = `years-customer-${String(n).padStart(6, '0')}`
    const family = one(random, starts) + one(random, middles) + one(random, ends)
    const name = `${one(random, given)} ${family}`
    owners.push({
      id,
      name,
      // Five digits count the owners; the exchange 555 leads to nobody.
      phone:
        random() < 0.9 ? `+1${212 + Math.floor(n / 10_000)}555${String(n % 10_000).padStart(4, '0')}` : null,
      email:
        random() < 0.8
          ? `${family
              .normalize('NFKD')
              .replaceAll(/[^a-z]/gi, '')
              .toLowerCase()}.${n}@example.com`
          : null,
    })
    const more = n % ownersAFleet === ownersAFleet / 20 ? fleetCars - 1 : n % 2
    for (let k = more; k >= 0; k--) {
      const [make, model, sizeClass] = one(random, makes)
      const letters = Array.from({ length: 3 }, () => one(random, plateLetters)).join('')
      cars.push({
        id: `years-car-${String(cars.length).padStart(6, '0')}`,
        customerId: id,
        plate: `${letters} ${String(1000 + Math.floor(random() * 9000))}`,
        make,
        model,
        colour: one(random, colours),
        year: thisYear - Math.floor(random() * 12),
        vin: random() < 0.6 ? vinOf(random) : null,
        sizeClass,
        finish: random() < 0.8 ? 'gloss' : 'satin',
      })
    }
  }
  return { owners, cars }
}
