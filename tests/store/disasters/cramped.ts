/*
 * A process on a disk with little room, which a limit on the size of its files stands for: run under `ulimit -f` by
 * crampedRun.ts with what it is to do and the database. It says the number of each act that was answered, and in the end
 * the words it was refused with.
 */

import { migrationsDir } from '../../../main/hosts/build.ts'
import { makeCopy } from '../../../main/store/backup/copies.ts'
import { openStore } from '../../../main/store/store.ts'

const [doing, file] = process.argv.slice(2) as [string, string]

async function write(): Promise<void> {
  const store = await openStore(file, { dir: migrationsDir })
  try {
    for (let number = 1; ; number++) {
      await store.transact({ who: 'writer', at: number }, async (tx, audit) => {
        const data = { name: `Customer ${number}`, note: 'x'.repeat(2_000) }
        const customer = await tx.customer.create({ data })
        const car = { customerId: customer.id, plate: `P${number}`, sizeClass: 'small' }
        await tx.vehicle.create({ data: car })
        audit({ act: 'made', entity: 'customer', entityId: customer.id })
      })
      console.log(number)
    }
  } catch (error) {
    throw store.explain(error)
  }
}

/** A data sheet or a photo is one large row. */
async function fileAway(): Promise<void> {
  const store = await openStore(file, { dir: migrationsDir })
  const bytes = Buffer.alloc(1_500_000, 'x')
  try {
    for (let number = 1; ; number++) {
      await store.transact({ who: 'writer', at: number }, async (tx, audit) => {
        const told = { name: 'sheet.pdf', type: 'application/pdf', who: 'writer', at: number }
        const { id } = await tx.storedFile.create({
          data: { ...told, bytes, size: bytes.length, sha256: `${number}` },
        })
        audit({ act: 'filed', entity: 'file', entityId: id })
      })
      console.log(number)
    }
  } catch (error) {
    throw store.explain(error)
  }
}

const work: Record<string, () => Promise<unknown>> = {
  write,
  fileAway,
  copy: () => makeCopy(file, { at: 29_604_030, passphrase: null }),
  migrate: () => openStore(file, { dir: migrationsDir }),
}

try {
  await work[doing]?.()
  console.log('done')
} catch (error) {
  const { name, message } = error as Error
  console.log(`${name}: ${message}`)
}
process.exit(0)
