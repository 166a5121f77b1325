import type { Store } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import type { CustomerView, VehicleView } from './customers.ts'
import type { CustomersFoundInput } from './inputs.ts'
import { peopleOf } from './peopleKept.ts'

type Listed = 'id' | 'name' | 'phone' | 'email' | 'archivedAt' | 'version'

export interface FoundCustomer extends Pick<CustomerView, Listed> {
  vehicles: Omit<VehicleView, 'note' | 'vin' | 'paint' | 'panels' | 'archivedAt'>[]
}

/**
 * Customers by any part of a name, tag, phone, e-mail address, plate, identification number or car, of theirs or of their
 * contacts, accents, capitals and separators aside; every word typed must be found, and where nobody is, with a slip of the
 * hand too. Without text: all, by name. `total` counts what was found, `customers` holds `limit` (50) of them from the
 * `cursor`th on, and `next` is where the rest begins.
 */
export async function findCustomers(desk: Desk, input: CustomersFoundInput) {
  const { text, archived = false, cursor = 0, limit = 50 } = input
  const ids = (await peopleOf(desk.store)).find(text, archived)
  return {
    customers: await foundCustomers(desk.store, ids.slice(cursor, cursor + limit)),
    total: ids.length,
    next: cursor + limit < ids.length ? cursor + limit : null,
  }
}

/** These customers as a list shows them, in this order. */
export async function foundCustomers(store: Store, ids: readonly string[]): Promise<FoundCustomer[]> {
  const rows = await store.read.customer.findMany({
    where: { id: { in: [...ids] } },
    select: {
      id: true,
      name: true,
      phone: true,
      email: true,
      archivedAt: true,
      version: true,
      vehicles: {
        where: { archivedAt: null },
        orderBy: { id: 'asc' },
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
  const byId = new Map(rows.map(row => [row.id, row as FoundCustomer]))
  return ids.flatMap(id => byId.get(id) ?? [])
}
