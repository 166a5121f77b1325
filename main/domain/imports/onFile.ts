/** Who and what is on file while a list is read, and what the list asked about. */
import { nameKey, type Person, plateKey } from '../vehicle/index.ts'

export type OnFile = Person & { readonly id: string }

export interface OnFileCar {
  readonly id: string
  readonly plate: string
  readonly vin: string | null
  readonly customerId: string
}

/** Rows that stand in one of the two lists only: added, gone, or changed. */
function changed<T extends object>(then: readonly T[], now: readonly T[]): T[] {
  const keyed = (rows: readonly T[]) => new Map(rows.map(row => [JSON.stringify(Object.values(row)), row]))
  const [before, after] = [keyed(then), keyed(now)]
  return [
    ...[...before].flatMap(([key, row]) => (after.has(key) ? [] : [row])),
    ...[...after].flatMap(([key, row]) => (before.has(key) ? [] : [row])),
  ]
}

/** Who is on file, by name in any order and accent; whoever a list adds is on file for its later rows. */
export class PeopleOnFile {
  readonly #then: readonly OnFile[]
  readonly #byName = new Map<string, OnFile[]>()
  readonly #asked = new Set<string>()

  constructor(people: readonly OnFile[] = []) {
    this.#then = people
    for (const person of people) this.add(person)
  }

  add(person: OnFile): void {
    const key = nameKey(person.name)
    const same = this.#byName.get(key)
    if (same) same.push(person)
    else this.#byName.set(key, [person])
  }

  named(name: string): readonly OnFile[] {
    const key = nameKey(name)
    this.#asked.add(key)
    return this.#byName.get(key) ?? []
  }

  /** Whether every answer given would be given again of those on file now. */
  stands(now: readonly OnFile[]): boolean {
    return !changed(this.#then, now).some(({ name }) => this.#asked.has(nameKey(name)))
  }
}

/** The cars on file by plate and VIN; those a list adds are on file for its later rows. */
export class CarsOnFile {
  readonly #then: readonly OnFileCar[]
  readonly #byPlate = new Map<string, OnFileCar>()
  readonly #byVin = new Map<string, OnFileCar>()
  readonly #asked = new Set<string>()

  constructor(cars: readonly OnFileCar[] = []) {
    this.#then = cars
    for (const car of cars) this.add(car)
  }

  add(car: OnFileCar): void {
    const key = plateKey(car.plate)
    if (key !== '') this.#byPlate.set(key, car)
    if (car.vin !== null) this.#byVin.set(car.vin, car)
  }

  find(plate: string, vin: string | null): OnFileCar | undefined {
    for (const key of keysOf({ plate, vin })) this.#asked.add(key)
    return (plate === '' ? undefined : this.#byPlate.get(plateKey(plate))) ?? this.#byVin.get(vin ?? '')
  }

  /** Whether every answer given would be given again of those on file now. */
  stands(now: readonly OnFileCar[]): boolean {
    return !changed(this.#then, now).some(car => keysOf(car).some(key => this.#asked.has(key)))
  }
}

const keysOf = ({ plate, vin }: Pick<OnFileCar, 'plate' | 'vin'>) => [
  ...(plateKey(plate) === '' ? [] : [`plate ${plateKey(plate)}`]),
  ...(vin === null ? [] : [`vin ${vin}`]),
]
