/** Everybody in use, of thousands in one piece: by what tells whether they are on file already. */
import type { Tx } from './store.ts'

export interface NamedRow {
  id: string
  name: string
  phone: string | null
  email: string | null
}

export async function namesInUse(tx: Tx): Promise<NamedRow[]> {
  const [row] = await tx.$queryRaw<{ list: string }[]>`
    select json_group_array(json_array(id, name, phone, email)) as list from Customer where archivedAt is null`
  const list = JSON.parse(row?.list ?? '[]') as [string, string, string | null, string | null][]
  return list.map(([id, name, phone, email]) => ({ id, name, phone, email }))
}

export interface CarRow {
  id: string
  plate: string
  vin: string | null
  customerId: string
}

export async function carsInUse(tx: Tx): Promise<CarRow[]> {
  const [row] = await tx.$queryRaw<{ list: string }[]>`
    select json_group_array(json_array(v.id, v.plate, v.vin, v.customerId)) as list
    from Vehicle v join Customer c on c.id = v.customerId where v.archivedAt is null and c.archivedAt is null`
  const list = JSON.parse(row?.list ?? '[]') as [string, string, string | null, string][]
  return list.map(([id, plate, vin, customerId]) => ({ id, plate, vin, customerId }))
}
