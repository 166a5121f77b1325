import { Prisma } from './generated/client.ts'
import type { Tx } from './store.ts'

/** One container with what is left in it by the ledger, and what its size says. */
export interface LotRow {
  id: string
  number: number
  productId: string
  sizeId: string | null
  sizeLabel: string | null
  tareG: number | null
  batch: string | null
  receivedOn: string
  expiresOn: string | null
  openedOn: string | null
  lifeAfterOpeningDays: number | null
  /** Of a batch mixed here. */
  waterParts: number | null
  /** What its moves leave. */
  centi: number
}

const columns = Prisma.sql`
  l.id, l.number, l.productId, l.sizeId, s.label as sizeLabel, s.tareG, l.batch, l.receivedOn, l.expiresOn,
  l.openedOn, l.lifeAfterOpeningDays, l.waterParts, l.leftCenti as centi`

/** The containers with something in them, of these products or of all: a handful, however many were emptied. */
export async function lotRows(tx: Tx, productIds?: readonly string[]): Promise<LotRow[]> {
  const of = productIds ? Prisma.sql`and l.productId in (${Prisma.join(['', ...productIds])})` : Prisma.empty
  const rows = await tx.$queryRaw<LotRow[]>`
    select ${columns} from Lot l left join ContainerSize s on s.id = l.sizeId
    where l.leftCenti > 0 ${of} order by l.number`
  return rows.map(plain)
}

/** Containers by id, empty ones too. */
export async function lotRowsById(tx: Tx, ids: readonly string[]): Promise<LotRow[]> {
  const rows = await tx.$queryRaw<LotRow[]>`
    select ${columns} from Lot l left join ContainerSize s on s.id = l.sizeId
    where l.id in (${Prisma.join(['', ...ids])}) order by l.number`
  return rows.map(plain)
}

/** The containers of one product that were emptied last: where more was used than counted, it was in one of these. */
export async function emptiedLotRows(tx: Tx, productId: string, most = 5): Promise<LotRow[]> {
  const rows = await tx.$queryRaw<LotRow[]>`
    select ${columns} from Lot l left join ContainerSize s on s.id = l.sizeId
    where l.productId = ${productId} and l.leftCenti = 0 order by l.number desc limit ${most}`
  return rows.map(plain)
}

/** SQLite's sums come as bigint where they are large. */
function plain(row: LotRow): LotRow {
  return { ...row, number: Number(row.number), centi: Number(row.centi) }
}
