/*
 * A process that writes until it is killed: each act makes a customer, a vehicle of theirs and an audit line, and says
 * its number once the store has answered. Run by durability.test.ts with the database and a first number.
 */
import { migrationsDir } from '../../main/hosts/build.ts'
import { openStore } from '../../main/store/store.ts'

const [file, first] = process.argv.slice(2)
const store = await openStore(file!, { dir: migrationsDir })
console.log('open')
for (let number = Number(first); ; number++) {
  await store.transact({ who: 'writer', at: number }, async (tx, audit) => {
    const customer = await tx.customer.create({ data: { name: `Customer ${number}` } })
    await tx.vehicle.create({ data: { customerId: customer.id, plate: `P${number}`, sizeClass: 'small' } })
    audit({ act: 'made', entity: 'customer', entityId: customer.id, detail: { number } })
  })
  console.log(number)
}
