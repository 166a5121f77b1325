import { foldText, looseKey } from '../../domain/vehicle/index.ts'
import type { Store } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import type { CustomerView, VehicleView } from './customers.ts'

export interface FoundCustomer extends Omit<CustomerView, 'note' | 'vehicles' | 'visits'> {
  vehicles: Omit<VehicleView, 'note' | 'vin' | 'archivedAt'>[]
}

interface Entry {
  customer: FoundCustomer
  /** Name, address and cars in plain small letters. */
  words: string
  /** Digits of the phone. */
  digits: string
  /** Plates without separators, look-alikes made one. */
  plates: string[]
}

/**
 * Customers by any part of a name, phone, e-mail address, plate or car, accents, capitals and separators aside; every
 * word typed must be found. Without text: all, by name. `total` counts what was found, `customers` holds the first
 * `limit` (50).
 */
export async function findCustomers(
  desk: Desk,
  input: { text: string; limit?: number | undefined; archived?: boolean | undefined },
): Promise<{ customers: FoundCustomer[]; total: number }> {
  const entries = await indexOf(desk.store)
  const words = foldText(input.text).split(' ').filter(Boolean)
  const all = looseKey(input.text)
  const found = entries.filter(
    entry =>
      (input.archived || entry.customer.archivedAt === null) &&
      (words.every(word => matches(entry, word)) || (all.length > 2 && matches(entry, all.toLowerCase()))),
  )
  return { customers: found.slice(0, input.limit ?? 50).map(entry => entry.customer), total: found.length }
}

function matches(entry: Entry, word: string): boolean {
  // One or two digits are in half of all model years and addresses; only a plate is worth finding by them.
  if (!/^\d{1,2}$/.test(word) && entry.words.includes(word)) return true
  const plate = looseKey(word)
  if (plate.length > 1 && entry.plates.some(each => each.includes(plate))) return true
  if (/\p{L}/u.test(word)) return false
  const typed = word.replaceAll(/\D/g, '')
  // A trunk zero is typed at home but is no part of the international number.
  return [typed, typed.replace(/^0+/, '')].some(part => part.length > 2 && entry.digits.includes(part))
}

const indexes = new WeakMap<Store, Promise<Entry[]>>()

/**
 * All customers in memory, read again after any save: a few thousand strings are searched faster than the database could
 * fold them, and a desk asks at every key.
 */
function indexOf(store: Store): Promise<Entry[]> {
  const known = indexes.get(store)
  if (known) return known
  const reading = readIndex(store)
  indexes.set(store, reading)
  const forget = () => {
    stop()
    if (indexes.get(store) === reading) indexes.delete(store)
  }
  const stop = store.onCommit(forget)
  reading.catch(forget)
  return reading
}

async function readIndex(store: Store): Promise<Entry[]> {
  const rows = await store.read.customer.findMany({
    select: {
      id: true,
      name: true,
      phone: true,
      email: true,
      archivedAt: true,
      version: true,
      vehicles: {
        where: { archivedAt: null },
        // No order here: sorted rows of many parents cannot be asked for in parts, and SQLite takes a thousand at most.
        select: {
          id: true,
          plate: true,
          make: true,
          model: true,
          colour: true,
          year: true,
          sizeClass: true,
          finish: true,
          version: true,
        },
      },
    },
  })
  const collator = new Intl.Collator('en', { sensitivity: 'base', numeric: true })
  return rows
    .sort((a, b) => collator.compare(a.name, b.name))
    .map(row => {
      const customer = row as FoundCustomer
      customer.vehicles.sort((a, b) => (a.id < b.id ? -1 : 1))
      const cars = customer.vehicles.map(car => [car.make, car.model, car.colour, car.year ?? ''].join(' '))
      return {
        customer,
        words: foldText([customer.name, customer.email ?? '', ...cars].join(' ')),
        digits: customer.phone?.replaceAll(/\D/g, '') ?? '',
        plates: customer.vehicles.map(car => looseKey(car.plate)),
      }
    })
}
