import { say } from '../language/index.ts'
import {
  type CustomerKind,
  checkNote,
  checkTags,
  checkText,
  customerKinds,
  type Finish,
  finishes,
  type PaintSystem,
  paintSystems,
  type SizeClass,
  sizeClasses,
} from '../shop/index.ts'
import {
  checkVin,
  likelySame,
  modelYearOf,
  type Person,
  plateKey,
  readMailAddress,
  readPlate,
} from '../vehicle/index.ts'
import type { CarsOnFile, OnFile, PeopleOnFile } from './onFile.ts'
import { type RowFound, RowReader, type RowRules } from './row.ts'
import { readWord } from './words.ts'

export interface NewCustomer extends Person {
  readonly id: string
  readonly kind: CustomerKind
  readonly tags: readonly string[]
  readonly note: string
  readonly postal: string
}

export interface NewVehicle {
  readonly id: string
  readonly customerId: string
  readonly plate: string
  readonly vin: string | null
  readonly make: string
  readonly model: string
  readonly colour: string
  readonly year: number | null
  readonly sizeClass: SizeClass
  readonly finish: Finish
  readonly paint: PaintSystem
  readonly note: string
}

const customerWords: Readonly<Record<string, CustomerKind>> = {
  private: 'person',
  individual: 'person',
  company: 'firm',
  business: 'firm',
}

/** A row of customers; one who is likely on file already is left as they are. */
export function readCustomer(
  cells: readonly string[],
  rules: RowRules,
  people: PeopleOnFile,
): RowFound<NewCustomer> {
  const row = new RowReader(cells, rules.reading)
  const given = row.text('givenName')
  const name = row.read('name', text => checkText(`${given} ${text}`, 'name', say('The name')), given)
  if (name === '') row.wrong('name', say('The name is missing; write one.'))
  const phone = row.read<string | null>('phone', rules.phone, null)
  const email = row.read<string | null>('email', text => readMailAddress(text), null)
  const kind = row.word('kind', text => readWord(text, customerKinds, customerWords), 'person', customerKinds)
  const values: NewCustomer = {
    id: rules.newId(),
    name,
    phone,
    email,
    kind,
    tags: row.read('tags', text => checkTags(text.split(/[,;]/)), []),
    note: row.read('note', text => checkNote(text, 'note'), ''),
    postal: row.read('postal', text => checkNote(text, 'postal', 400), ''),
  }
  if (row.problems.length > 0) return { state: 'bad', problems: row.problems }
  const same = people.named(name).find(other => likelySame(values, other))
  if (same) return { state: 'known', why: say('{name} is on file already.', { name: same.name }) }
  people.add(values)
  return { state: 'new', values, notes: [] }
}

const sizeWords: Readonly<Record<string, SizeClass>> = {
  s: 'small',
  m: 'medium',
  l: 'large',
  'extra large': 'xl',
  compact: 'small',
}

const firstYear = 1886

function readYear(row: RowReader, { today }: RowRules): number | null {
  const text = row.text('year')
  if (text === '') return null
  const year = Number(text)
  const latest = Number(today.slice(0, 4)) + 2
  if (!Number.isInteger(year) || year < firstYear || year > latest) {
    row.wrong(
      'year',
      say('Write a model year from {firstYear} to {latest}, or leave it empty.', { firstYear, latest }),
    )
    return null
  }
  return year
}

/** The VIN, with a sentence where it may be misread. */
function readVin(row: RowReader): { vin: string | null; notes: string[] } {
  const text = row.text('vin')
  if (text === '') return { vin: null, notes: [] }
  const { vin, problems, warning } = checkVin(text)
  if (problems[0]) {
    row.wrong('vin', problems[0].message)
    return { vin: null, notes: [] }
  }
  return { vin, notes: warning ? [say('VIN: {warning}', { warning })] : [] }
}

/**
 * A row of vehicles. Its owner is whoever is on file under that name, and is written down new where nobody is; a car that
 * is on file already is left as it is.
 */
export function readVehicle(
  cells: readonly string[],
  rules: RowRules,
  { people, cars }: { people: PeopleOnFile; cars: CarsOnFile },
): RowFound<{ vehicle: NewVehicle; owner: NewCustomer | null }> {
  const row = new RowReader(cells, rules.reading)
  const plate = row.read('plate', text => readPlate(text).shown, '')
  const { vin, notes } = readVin(row)
  const year = readYear(row, rules)
  const part = (field: string) => row.read(field, text => checkNote(text, field, 60), '')
  const vehicle = {
    id: rules.newId(),
    plate,
    vin,
    make: part('make'),
    model: part('model'),
    colour: part('colour'),
    year,
    sizeClass: row.word('sizeClass', text => readWord(text, sizeClasses, sizeWords), 'medium', sizeClasses),
    finish: row.word('finish', text => readWord(text, finishes), 'gloss', finishes),
    paint: row.word('paint', text => readWord(text, paintSystems), 'unknown', paintSystems),
    note: row.read('note', text => checkNote(text, 'note'), ''),
  }
  const name = row.read('ownerName', text => checkText(text, 'ownerName', say('The owner’s name')), '')
  const phone = row.read<string | null>('ownerPhone', rules.phone, null)
  const email = row.read<string | null>('ownerEmail', text => readMailAddress(text), null)
  if (row.text('ownerName') === '') row.wrong('ownerName', say('Whose car it is is missing; write the name.'))
  if (![plate, vin, vehicle.make, vehicle.model].some(Boolean) && row.problems.length === 0)
    row.wrong('plate', say('Nothing says which car it is; write a plate, a VIN, or make and model.'))
  const there = cars.find(plate, vin)
  const owner = row.problems.length > 0 ? null : ownerOf({ name, phone, email }, row, people)
  if (row.problems.length > 0 || owner === null) return { state: 'bad', problems: row.problems }
  if (there) {
    if (owner !== 'new' && there.customerId === owner.id)
      return { state: 'known', why: say('{name} is on file already.', { name: there.plate || there.vin }) }
    row.wrong(
      there.plate !== '' && plateKey(there.plate) === plateKey(plate) ? 'plate' : 'vin',
      say('This belongs to somebody else’s car; open that car and enter its new owner.'),
    )
    return { state: 'bad', problems: row.problems }
  }
  const added: NewCustomer | null =
    owner === 'new'
      ? { id: rules.newId(), name, phone, email, kind: 'person', tags: [], note: '', postal: '' }
      : null
  if (added) people.add(added)
  const customerId = added?.id ?? (owner as OnFile).id
  const kept = { ...vehicle, customerId }
  cars.add(kept)
  return {
    state: 'new',
    values: { vehicle: kept, owner: added },
    notes: [...notes, ...yearNotes(vin, year)],
  }
}

function yearNotes(vin: string | null, year: number | null): string[] {
  const read = vin === null ? null : modelYearOf(vin)
  if (!read || year === null || year === read.year || year === read.otherYear) return []
  return [
    say('The VIN says {first} or {second}, not {year}.', { first: read.year, second: read.otherYear, year }),
  ]
}

/** The one of this name, told apart by phone or address where there are several; `new` where there is none. */
function ownerOf(person: Person, row: RowReader, people: PeopleOnFile): OnFile | 'new' | null {
  const named = people.named(person.name)
  const same = named.filter(other => likelySame(person, other))
  if (same.length === 1) return same[0]!
  if (same.length === 0) return 'new'
  const sure = same.filter(
    other =>
      (person.phone !== null && other.phone === person.phone) ||
      (person.email !== null && other.email === person.email),
  )
  if (sure.length === 1) return sure[0]!
  row.wrong(
    'ownerName',
    say('There are {count} customers of this name; add the phone that tells them apart.', {
      count: same.length,
    }),
  )
  return null
}
