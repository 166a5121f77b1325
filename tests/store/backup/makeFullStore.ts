import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { type AuditEntry, openStore, type Store, type Tx } from '../../../main/store/store.ts'
import { makeFolder, stamp } from '../openDatabase.ts'

async function addTo(tx: Tx, audit: (entry: AuditEntry) => void, name: string): Promise<void> {
  const { id } = await tx.customer.create({ data: { name } })
  await tx.vehicle.create({ data: { customerId: id, plate: `P ${name}`, sizeClass: 'small' } })
  audit({ act: 'added', entity: 'customer', entityId: id })
}

/** A customer with a car and an audit line, in one act. */
export function addCustomer(store: Store, name: string): Promise<void> {
  return store.transact(stamp, (tx, audit) => addTo(tx, audit, name))
}

/** A store of a shop of its own, known by an id of its own, with so many customers. */
export async function makeFullStore(
  customers: number,
  dir = makeFolder(),
): Promise<{ store: Store; file: string }> {
  const file = join(dir, 'lustrum.db')
  const store = await openStore(file, { dir: migrationsDir })
  onTestFinished(() => store.close())
  await store.transact(stamp, async (tx, audit) => {
    await tx.shop.create({
      data: {
        name: 'Ashdown Paint Care',
        zone: 'America/New_York',
        currency: 'USD',
        weekly: [],
        conditionFactors: { good: 1, worn: 1.25, heavy: 1.5 },
      },
    })
    for (let i = 1; i <= customers; i++) await addTo(tx, audit, `Customer ${i}`)
  })
  return { store, file }
}
