/** How owners are reached and what they said about it, of thousands in one piece each. */
import { Prisma } from './generated/client.ts'
import type { Tx } from './store.ts'

export interface OwnerRow {
  id: string
  name: string
  phone: string | null
  email: string | null
  language: string | null
  zone: string | null
  postal: string | null
}

export interface ConsentRow {
  id: string
  customerId: string
  channel: string
  what: string
  at: number
  address: string | null
  source: string
  wording: string
}

async function read<T>(tx: Tx, query: Prisma.Sql): Promise<T[]> {
  const [row] = await tx.$queryRaw<{ list: string }[]>(query)
  return JSON.parse(row?.list ?? '[]') as T[]
}

/** The owners asked for, with what is on file besides the telephone and e-mail. */
export function ownerRows(tx: Tx, ids: readonly string[]): Promise<OwnerRow[]> {
  return read(
    tx,
    Prisma.sql`select json_group_array(json_object('id', c.id, 'name', c.name, 'phone', c.phone, 'email', c.email,
        'language', r.language, 'zone', r.zone, 'postal', r.postal)) as list
      from json_each(${JSON.stringify(ids)}) j cross join Customer c on c.id = j.value
      left join OwnerReach r on r.customerId = c.id`,
  )
}

const consentColumns = Prisma.sql`json_group_array(json_object('id', c.id, 'customerId', c.customerId, 'channel', c.channel,
  'what', c.what, 'at', c.at, 'address', c.address, 'source', c.source, 'wording', c.wording)) as list`

/** All these owners ever said about being written to. */
export function consentRows(tx: Tx, customerIds: readonly string[]): Promise<ConsentRow[]> {
  return read(
    tx,
    Prisma.sql`select ${consentColumns}
      from json_each(${JSON.stringify(customerIds)}) j cross join Consent c on c.customerId = j.value`,
  )
}

/** Every withdrawal that names an address: it stops everybody who has it. */
export function addressStops(tx: Tx): Promise<ConsentRow[]> {
  return read(
    tx,
    Prisma.sql`select ${consentColumns} from Consent c where c.what = 'withdrawn' and c.address is not null`,
  )
}
