/** Rows put back as an act found them, one after the other from the last to the first. */
import { Prisma } from '../generated/client.ts'
import type { Tx } from '../store.ts'
import { literals, type WatchedTable } from './watch.ts'

/** One row that an act changed; `before` and `after` as they were kept. */
export interface FollowedRow {
  readonly seq: number
  readonly table: string
  readonly key: string
  readonly before: string | null
  readonly after: string | null
}

/** The rows of an act, the last first. */
export async function rowsOfAct(tx: Tx, actId: number): Promise<FollowedRow[]> {
  const rows = await tx.actRow.findMany({ where: { actId }, orderBy: { seq: 'desc' } })
  return rows.map(({ actId: _, ...row }) => row)
}

/** The first act after this one that changed a row of it and still stands; null: none did. */
export async function changedSince(tx: Tx, actId: number): Promise<number | null> {
  const [later] = await tx.$queryRaw<{ id: number | bigint }[]>`
    select a."id" from "Act" a
    where a."id" > ${actId} and a."takenBackById" is null and a."takesBackId" is null and exists (
      select 1 from "ActRow" l join "ActRow" o on o."table" = l."table" and o."key" = l."key"
      where l."actId" = a."id" and o."actId" = ${actId}
    ) order by a."id" desc limit 1`
  return later ? Number(later.id) : null
}

/** The keys of the rows of one table that acts after this one have changed, but for what was taken back again. */
export async function touchedSince(tx: Tx, actId: number, table: string): Promise<ReadonlySet<string>> {
  const rows = await tx.$queryRaw<{ key: string }[]>`
    select distinct r."key" from "ActRow" r join "Act" a on a."id" = r."actId"
    where a."id" > ${actId} and a."takenBackById" is null and coalesce(a."takesBackId", 0) < ${actId}
      and r."table" = ${table}`
  return new Set(rows.map(({ key }) => keyOf(key)))
}

/** The acts of the last day that changed this row and stand, the last first. */
export async function lastActsOn(tx: Tx, table: string, id: string, most: number): Promise<number[]> {
  const rows = await tx.$queryRaw<{ id: number | bigint }[]>`
    select distinct a."id" from "Act" a join "ActRow" r on r."actId" = a."id"
    where a."takenBackById" is null and r."table" = ${table} and r."key" = json_array(quote(${id}))
    order by a."id" desc limit ${most}`
  return rows.map(row => Number(row.id))
}

/** The key of a row that has a single one. */
export function keyOf(key: string): string {
  return String(plainOf((JSON.parse(key) as string[])[0]))
}

/** What was kept of a row, by column; SQL literals. */
export function columnsOf({ columns }: WatchedTable, kept: string): Record<string, string> {
  const values = JSON.parse(kept) as string[]
  return Object.fromEntries(columns.map((column, i) => [column, values[i] ?? 'NULL']))
}

/** The value of a literal that is a text, a number or nothing. */
export function plainOf(literal: string | undefined): string | number | null {
  if (literal === undefined || literal === 'NULL') return null
  return literal.startsWith("'") ? literal.slice(1, -1).replaceAll("''", "'") : Number(literal)
}

/**
 * Puts one row back. False, and nothing is done, where it does not stand as the act left it. What was edited counts one
 * edit more: a form that was filled from the row as the act left it is stale, and must find so.
 */
export async function putRowBack(tx: Tx, table: WatchedTable, row: FollowedRow): Promise<boolean> {
  const name = `"${table.name}"`
  const keys = JSON.parse(row.key) as string[]
  const where = table.keys.map((column, i) => `"${column}" = ${keys[i]}`).join(' and ')
  const [now] = await tx.$queryRaw<{ row: string }[]>`
    select ${Prisma.raw(literals(table.columns))} as "row" from ${Prisma.raw(`${name} where ${where}`)}`
  if ((now?.row ?? null) !== row.after) return false
  if (row.before === null) {
    await tx.$executeRaw`delete from ${Prisma.raw(`${name} where ${where}`)}`
    return true
  }
  const before = columnsOf(table, row.before)
  if (row.after === null) {
    // A count that no row of this key can have had, so that no form still open can be taken for fresh.
    const all = table.versioned ? { ...before, version: String(1_000_000 + row.seq) } : before
    const columns = Object.keys(all).map(column => `"${column}"`)
    await tx.$executeRaw`insert into ${Prisma.raw(`${name} (${columns.join(', ')}) values (${Object.values(all).join(', ')})`)}`
    return true
  }
  const after = columnsOf(table, row.after)
  const sets = Object.entries(before)
    .filter(([column, literal]) => after[column] !== literal)
    .map(([column, literal]) => `"${column}" = ${literal}`)
  if (table.versioned) sets.push('"version" = "version" + 1')
  if (sets.length > 0)
    await tx.$executeRaw`update ${Prisma.raw(`${name} set ${sets.join(', ')} where ${where}`)}`
  return true
}
