/** What each row of a file would add, from what is on file now. Nothing is written here. */

import {
  CarsOnFile,
  type ImportKind,
  importFields,
  layerKey,
  type NewCoating,
  type NewCustomer,
  type NewProduct,
  type NewVehicle,
  oneOf,
  PeopleOnFile,
  type Problem,
  type Reading,
  type RowFound,
  type RowRules,
  readCoating,
  readCustomer,
  readProduct,
  readVehicle,
} from '../../domain/imports/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { foldText } from '../../domain/vehicle/index.ts'
import { carsInUse, namesInUse } from '../../store/peopleRows.ts'
import type { Tx } from '../../store/store.ts'
import type { Pace } from '../desk/beside.ts'
import type { OpenFile } from './opened.ts'

/** What a file would add, and what became of each of its rows. */
export interface PlannedRows {
  readonly customers: NewCustomer[]
  readonly vehicles: NewVehicle[]
  readonly coatings: NewCoating[]
  readonly products: NewProduct[]
  readonly added: number
  readonly bad: { row: number; problems: readonly Problem[] }[]
  readonly known: { row: number; why: string }[]
  readonly notes: { row: number; note: string }[]
  /** Who and which cars were on file, where the rows were told apart by them. */
  readonly people: PeopleOnFile | null
  readonly cars: CarsOnFile | null
}

/** Looked at between two turns of everybody else. */
const piece = 100

/** Refuses a reading that names no column a row cannot do without. */
export function assertReadable(file: OpenFile, { columns }: Reading): void {
  const there = (field: string) => {
    const column = columns[field]
    return column !== null && column !== undefined && column < file.columns.length
  }
  for (const { field, label, needed } of importFields[file.kind])
    if (needed && !there(field))
      refuse(
        'no-column',
        { [`columns.${field}`]: null },
        say('Choose the column that holds: {label}.', { label: say(label) }),
      )
  const one = oneOf[file.kind]
  if (one && !one.some(there))
    refuse('no-column', { [`columns.${one[0]}`]: null }, say('Choose the column of the plate or of the VIN.'))
}

/** Stopped in the middle: null. */
export async function planRows(
  tx: Tx,
  file: OpenFile,
  rules: RowRules,
  pace: Pace,
): Promise<PlannedRows | null> {
  const planned: Planning = {
    customers: [],
    vehicles: [],
    coatings: [],
    products: [],
    added: 0,
    bad: [],
    known: [],
    notes: [],
    people: null,
    cars: null,
  }
  const read = await readers[file.kind](tx, rules, planned)
  pace.total = file.rows.length
  for (const [i, cells] of file.rows.entries()) {
    if (i % piece === 0 && !(await pace.turn())) return null
    pace.done = i
    if (!cells.some(cell => cell.trim() !== '')) continue
    const row = file.firstRow + i
    const found = read(cells)
    if (found.state === 'bad') planned.bad.push({ row, problems: found.problems })
    else if (found.state === 'known') planned.known.push({ row, why: found.why })
    else {
      planned.added++
      for (const note of found.notes) planned.notes.push({ row, note })
    }
  }
  return planned
}

/**
 * Whether the rows would be read now as they were, whatever people and cars were saved since: nobody and no car that any
 * of them asked about is another one.
 */
export async function stillStands(tx: Tx, { people, cars }: PlannedRows): Promise<boolean> {
  return (people?.stands(await namesInUse(tx)) ?? true) && (cars?.stands(await carsInUse(tx)) ?? true)
}

type Planning = { -readonly [Field in keyof PlannedRows]: PlannedRows[Field] }
type ReadRow = (cells: readonly string[]) => RowFound<unknown>
type MakeReader = (tx: Tx, rules: RowRules, planned: Planning) => Promise<ReadRow>

/** Notes what a row adds, where it adds anything. */
function kept<T>(found: RowFound<T>, keep: (values: T) => void): RowFound<T> {
  if (found.state === 'new') keep(found.values)
  return found
}

const readers: Readonly<Record<ImportKind, MakeReader>> = {
  async customers(tx, rules, planned) {
    const people = new PeopleOnFile(await namesInUse(tx))
    planned.people = people
    return cells => kept(readCustomer(cells, rules, people), each => planned.customers.push(each))
  },

  async vehicles(tx, rules, planned) {
    const known = {
      people: new PeopleOnFile(await namesInUse(tx)),
      cars: new CarsOnFile(await carsInUse(tx)),
    }
    Object.assign(planned, known)
    return cells =>
      kept(readVehicle(cells, rules, known), ({ vehicle, owner }) => {
        planned.vehicles.push(vehicle)
        if (owner) planned.customers.push(owner)
      })
  },

  async coatings(tx, rules, planned) {
    const rows = await tx.product.findMany({
      where: { archivedAt: null },
      select: { id: true, name: true, kind: true },
    })
    const layers = await tx.layer.findMany({ select: { vehicleId: true, productId: true, laidOn: true } })
    const known = {
      cars: new CarsOnFile(await carsInUse(tx)),
      products: new Map(rows.map(product => [foldText(product.name), product])),
      layers: new Set(layers.map(layerKey)),
    }
    planned.cars = known.cars
    return cells => kept(readCoating(cells, rules, known), each => planned.coatings.push(each))
  },

  async products(tx, rules, { products }) {
    const rows = await tx.product.findMany({ where: { archivedAt: null }, select: { name: true } })
    const names = new Set(rows.map(({ name }) => name.toLowerCase()))
    return cells => kept(readProduct(cells, rules, names), each => products.push(each))
  },
}
