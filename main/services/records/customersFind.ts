import type { Desk } from '../desk/desk.ts'
import type { CustomerView, VehicleView } from './customers.ts'
import type { CustomersFoundInput } from './inputs.ts'
import { peopleOf } from './peopleKept.ts'

export interface FoundCustomer extends Omit<CustomerView, 'note' | 'vehicles' | 'visits'> {
  vehicles: Omit<VehicleView, 'note' | 'vin' | 'panels' | 'archivedAt'>[]
}

/**
 * Customers by any part of a name, phone, e-mail address, plate, identification number or car, accents, capitals and
 * separators aside; every word typed must be found, and where nobody is, with a slip of the hand too. Without
 * text: all, by name. `total` counts what was found, `customers` holds `limit` (50) of them from the `cursor`th on, and
 * `next` is where the rest begins.
 */
export async function findCustomers(desk: Desk, input: CustomersFoundInput) {
  const { text, archived = false, cursor = 0, limit = 50 } = input
  const ids = (await peopleOf(desk.store)).find(text, archived)
  const asked = ids.slice(cursor, cursor + limit)
  const rows = await desk.store.read.customer.findMany({
    where: { id: { in: asked } },
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
  return {
    customers: asked.flatMap(id => byId.get(id) ?? []),
    total: ids.length,
    next: cursor + limit < ids.length ? cursor + limit : null,
  }
}
