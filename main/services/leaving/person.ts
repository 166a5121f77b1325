/** Everything about one person, as a file they can be given. */
import { say } from '../../domain/language/index.ts'
import { found } from '../../domain/refusal.ts'
import { readTables } from '../../store/tables/readTables.ts'
import { packZip } from '../../store/tables/zip.ts'
import type { Desk } from '../desk/desk.ts'
import { packedFiles } from './packed.ts'

export async function personFile(desk: Desk, { customerId }: { customerId: string }) {
  const customer = found(
    await desk.store.read.customer.findUnique({ where: { id: customerId } }),
    { customerId },
    say('There is no such customer; look them up again.'),
  )
  const read = readTables(desk.store.source.file, customerId)
  const chunks: Uint8Array[] = []
  try {
    await packZip(packedFiles({ read, nowAt: desk.now() }), async bytes => void chunks.push(bytes))
  } finally {
    read.close()
  }
  return {
    name: `${customer.name}.zip`,
    type: 'application/zip',
    keep: true,
    bytes: new Uint8Array(Buffer.concat(chunks)),
  }
}
