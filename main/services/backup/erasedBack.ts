/** People who were erased and are back with an older database: a restored copy, or a file put in its place. */

import { momentWords } from '../../domain/backup/index.ts'
import { say } from '../../domain/language/index.ts'
import { copiesDir } from '../../store/backup/copies.ts'
import { addErased, readErased } from '../../store/backup/erasedList.ts'
import type { Customer } from '../../store/rows.ts'
import type { Desk } from '../desk/desk.ts'
import { dataDirOf } from './settings.ts'

const listOf = (desk: Pick<Desk, 'store'>) => readErased(copiesDir(dataDirOf(desk)))

/** Puts on the list beside the copies who was erased in this database. */
export async function listErased(desk: Pick<Desk, 'store'>): Promise<void> {
  const done = await desk.store.read.erasure.findMany({ where: { done: true } })
  const list = Object.fromEntries(done.map(({ customerId, at }) => [customerId, at]))
  await addErased(copiesDir(dataDirOf(desk)), list)
}

/** Who is on the list and was not erased in this database. */
export async function erasedBack(desk: Pick<Desk, 'store'>): Promise<Customer[]> {
  const ids = Object.keys(await listOf(desk))
  if (ids.length === 0) return []
  const { read } = desk.store
  const done = await read.erasure.findMany({ where: { customerId: { in: ids }, done: true } })
  const known = new Set(done.map(({ customerId }) => customerId))
  return read.customer.findMany({ where: { id: { in: ids.filter(id => !known.has(id)) } } })
}

/** What is still to be done about them, in words; null: nothing. */
export async function erasedBackWords(desk: Desk, zone: string): Promise<string | null> {
  const back = await erasedBack(desk)
  if (back.length === 0) return null
  const list = await listOf(desk)
  const named = back.map(({ id, name }) => `${name} (${momentWords(list[id]!, { nowAt: desk.now(), zone })})`)
  return say(
    'Erased before, and back with an older copy: {named}. Cancel what they have booked or hand it over, then erase them again under Customers.',
    { named: named.join(', ') },
  )
}
