/** Rows of a list, thousands in one piece, and the way back. */
import { setImmediate as nextTurn } from 'node:timers/promises'
import { Prisma } from './generated/client.ts'
import type { Tx } from './store.ts'

/** What an import adds, by the word it is filed under: its table, and the column by which a row is known. */
export const importedTables = {
  customer: { table: 'Customer', key: 'id' },
  ownerReach: { table: 'OwnerReach', key: 'customerId' },
  vehicle: { table: 'Vehicle', key: 'id' },
  layer: { table: 'Layer', key: 'id' },
  upkeepPlan: { table: 'UpkeepPlan', key: 'id' },
  upkeepEntry: { table: 'UpkeepEntry', key: 'actId' },
  product: { table: 'Product', key: 'id' },
  shelfProduct: { table: 'ShelfProduct', key: 'productId' },
  containerSize: { table: 'ContainerSize', key: 'id' },
} as const
export type ImportedEntity = keyof typeof importedTables

/** A piece takes some ten milliseconds, and whoever reads has a turn after it. */
const atOnce = 1_000

const name = (text: string) => Prisma.raw(`"${text}"`)

/** Rows of one table as they go to the database: no act that writes them waits for their making. */
export interface ImportedPieces {
  readonly entity: ImportedEntity
  readonly columns: readonly string[]
  /** So many rows each, as JSON. */
  readonly pieces: readonly string[]
}

/** Rows, each an object of the same columns, made ready to be added. */
export function piecesOf(entity: ImportedEntity, rows: readonly object[]): ImportedPieces {
  const columns = Object.keys(rows[0] ?? {})
  const pieces: string[] = []
  for (let from = 0; from < rows.length; from += atOnce) {
    const part = rows.slice(from, from + atOnce) as Record<string, unknown>[]
    pieces.push(JSON.stringify(part.map(row => columns.map(each => row[each] ?? null))))
  }
  return { entity, columns, pieces }
}

/** Adds rows, and notes that they came in with the import. */
export async function addImported(
  tx: Tx,
  importId: string,
  { entity, columns, pieces }: ImportedPieces,
): Promise<void> {
  const { table, key } = importedTables[entity]
  const read = columns.map((_, i) => Prisma.sql`value ->> ${Prisma.raw(String(i))}`)
  for (const piece of pieces) {
    await tx.$executeRaw`insert into ${name(table)} (${Prisma.join(columns.map(name))})
      select ${Prisma.join(read)} from json_each(${piece})`
    await tx.$executeRaw`insert into "ImportedRow" ("importId", "entity", "rowId")
      select ${importId}, ${entity}, value ->> ${Prisma.raw(String(columns.indexOf(key)))} from json_each(${piece})`
    await nextTurn()
  }
}

/** Another text whenever a product or a layer was added or changed. */
export async function goodsStamp(tx: Tx): Promise<string> {
  const [row] = await tx.$queryRaw<{ stamp: string }[]>`
    select (select count(*) || ' ' || total(version) from Product) || ' ' || (select count(*) from Layer) as stamp`
  return row?.stamp ?? ''
}

/** Every column of another table that points at rows of this one. */
async function pointers(tx: Tx, table: string): Promise<{ table: string; column: string }[]> {
  return tx.$queryRaw`select m.name as "table", f."from" as "column"
    from sqlite_master m join pragma_foreign_key_list(m.name) f
    where m.type = 'table' and f."table" = ${table}`
}

/**
 * Takes out again what came in with an import, from what points to what is pointed at, but for rows that were changed
 * since or that something points at that stays. Gives the number taken out.
 */
export async function takeOutImported(tx: Tx, importId: string): Promise<number> {
  let taken = 0
  for (const entity of ['upkeepEntry', 'upkeepPlan', 'layer', 'vehicle', 'ownerReach', 'customer'] as const)
    taken += await takeOut(tx, importId, entity)
  for (const entity of ['containerSize', 'shelfProduct', 'product'] as const)
    taken += await takeOut(tx, importId, entity)
  return taken
}

const mine = (importId: string, entity: string) =>
  Prisma.sql`(select "rowId" from "ImportedRow" where "importId" = ${importId} and "entity" = ${entity})`

/** What keeps a row of each table, besides what points at it by a link of the database. */
function keeps(importId: string, entity: ImportedEntity): Prisma.Sql[] {
  const changed = Prisma.sql`t."version" > 1`
  if (entity === 'customer')
    return [changed, Prisma.sql`t."id" in (select "keptId" from "Merge" union select "goneId" from "Merge")`]
  // What was written down of a plan that stays, stays: its days follow from it.
  if (entity === 'upkeepEntry')
    return [
      Prisma.sql`t."planId" not in ${mine(importId, 'upkeepPlan')}`,
      Prisma.sql`t."planId" in (select "planId" from "Message")`,
      Prisma.sql`t."planId" in (select "id" from "UpkeepPlan" where "version" > 1)`,
      Prisma.sql`t."planId" in (select "planId" from "UpkeepEntry" where "planId" is not null
        and "actId" not in ${mine(importId, 'upkeepEntry')})`,
    ]
  return entity === 'layer' ? [] : [changed]
}

async function takeOut(tx: Tx, importId: string, entity: ImportedEntity): Promise<number> {
  const { table, key } = importedTables[entity]
  const held = (await pointers(tx, table)).map(
    each =>
      Prisma.sql`t."id" in (select ${name(each.column)} from ${name(each.table)} where ${name(each.column)} is not null)`,
  )
  const kept = [...keeps(importId, entity), ...held]
  const none = kept.length === 0 ? Prisma.empty : Prisma.sql`and not (${Prisma.join(kept, ' or ')})`
  return tx.$executeRaw`delete from ${name(table)} as t where t.${name(key)} in ${mine(importId, entity)} ${none}`
}

/** How many rows of an import are still there, by what they are. */
export async function importedLeft(tx: Tx, importId: string): Promise<Map<ImportedEntity, number>> {
  const left = new Map<ImportedEntity, number>()
  for (const [entity, { table, key }] of Object.entries(importedTables)) {
    const [row] = await tx.$queryRaw<{ count: bigint }[]>`
      select count(*) as count from ${name(table)} where ${name(key)} in ${mine(importId, entity)}`
    const count = Number(row?.count ?? 0)
    if (count > 0) left.set(entity as ImportedEntity, count)
  }
  return left
}
