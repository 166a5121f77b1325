/**
 * How a row that people change is kept: added, edited on the version they saw, put away, taken back, put in order,
 * each with its audit line.
 */
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkUnique } from '../../domain/shop/index.ts'
import { type JsonObject, noJson } from '../../store/json.ts'
import { assertFresh } from '../../store/store.ts'
import { changesBetween } from './changesBetween.ts'
import type { Audit } from './desk.ts'
import type { ListInput } from './inputs.ts'

/** Which row, and the version of it the person has seen. */
export interface RowSeen {
  id: string
  version: number
}

/** The same for a form that also adds: without an id it is a new row. */
export interface RowToSave {
  id?: string | undefined
  version?: number | undefined
}

/** A table whose rows people change, and the words for one of them. */
export interface Kept<Table> {
  table: Table
  /** What the audit line files it under. */
  entity: string
  /** What a refusal calls it, where that is another word. */
  noun?: string
  /** The id of the row it is filed under, where it is a part of another: its lines then say "offer added". */
  partOf?: string
}

type Stepped<Data> = Data & { version: { increment: 1 } }
type Count = PromiseLike<{ count: number }>

interface Savable<Row, Data, New> {
  findUnique: (args: { where: { id: string } }) => PromiseLike<Row | null>
  create: (args: { data: New }) => PromiseLike<RowSeen>
  updateMany: (args: { where: RowSeen; data: Stepped<Data> }) => Count
}

/**
 * Adds the row, or changes the one named; `added` is what a new row has beside `data`, and
 * `detail` what the audit line is to say of rows beneath it. Gives back the row as it was
 * (null: it is new) and what was changed, for checks that need to compare: a refusal still undoes the whole act.
 * @throws Refusal `stale` where somebody else saved it first.
 */
export async function saveRow<Row extends object, Data extends object, Added extends object = object>(
  audit: Audit,
  kept: Kept<Savable<Row, Data, Data & Added>>,
  seen: RowToSave,
  { data, added, detail = {} }: { data: Data; added?: Added; detail?: JsonObject },
): Promise<RowSeen & { before: Row | null; changes: JsonObject }> {
  const { table } = kept
  if (seen.id === undefined) {
    const { id, version } = await table.create({ data: { ...data, ...added } as Data & Added })
    note(audit, kept, { act: 'added', id, detail: { ...written(data), ...detail } })
    return { id, version, before: null, changes: {} }
  }
  const { id, version = 0 } = seen
  const before = await table.findUnique({ where: { id } })
  await saved(kept, id, table.updateMany({ where: { id, version }, data: stepped(data) }))
  const changes = changesBetween(before ?? {}, written(data))
  note(audit, kept, { act: 'changed', id, detail: { ...changes, ...detail } })
  return { id, version: version + 1, before, changes }
}

interface Single<Key, Row, Data> {
  findUnique: (args: { where: Key }) => PromiseLike<Row | null>
  create: (args: { data: Key & Data }) => PromiseLike<object>
  updateMany: (args: { where: Key & { version: number }; data: Stepped<Data> }) => Count
}

/**
 * Saves what there is once only: the shop's settings, or what belongs to one car or product. It comes into being with the
 * first save, which is made on version 0.
 * @throws Refusal `stale` where somebody else saved it first.
 */
export async function saveSingle<Key extends object, Row extends object, Data extends object>(
  audit: Audit,
  kept: Kept<Single<Key, Row, Data>>,
  seen: { key: Key; version: number | undefined },
  data: Data,
  detail: JsonObject = {},
): Promise<{ version: number; before: Row | null }> {
  const { table } = kept
  const { key, version = 0 } = seen
  const id = String(Object.values(key)[0])
  const before = await table.findUnique({ where: key })
  if (before === null && version === 0) await table.create({ data: { ...key, ...data } })
  else await saved(kept, id, table.updateMany({ where: { ...key, version }, data: stepped(data) }))
  note(audit, kept, {
    act: 'changed',
    id,
    detail: { ...changesBetween(before ?? {}, written(data)), ...detail },
  })
  return { version: version + 1, before }
}

interface Archivable {
  updateMany: (args: {
    where: RowSeen & { archivedAt: null }
    data: Stepped<{ archivedAt: number }>
  }) => Count
}

/** Puts a row away at the moment `at`. @throws Refusal `stale` where it was changed, or put away already. */
export async function archiveRow(
  audit: Audit,
  kept: Kept<Archivable>,
  { id, version }: RowSeen,
  { at, detail = {} }: { at: number; detail?: JsonObject },
): Promise<void> {
  const where = { id, version, archivedAt: null }
  await saved(kept, id, kept.table.updateMany({ where, data: stepped({ archivedAt: at }) }))
  note(audit, kept, { act: 'archived', id, detail })
}

interface Restorable<Data> {
  updateMany: (args: {
    where: RowSeen & { NOT: { archivedAt: null } }
    data: Stepped<Data & { archivedAt: null }>
  }) => Count
}

/** Takes a row back into use, with `data` such as its new place. @throws Refusal `stale` where it is in use, or changed. */
export async function restoreRow<Data extends object = object>(
  audit: Audit,
  kept: Kept<Restorable<Data>>,
  { id, version }: RowSeen,
  data?: Data,
): Promise<void> {
  const where = { id, version, NOT: { archivedAt: null } }
  const restored = { ...data, archivedAt: null } as Data & { archivedAt: null }
  await saved(kept, id, kept.table.updateMany({ where, data: stepped(restored) }))
  note(audit, kept, { act: 'restored', id })
}

interface Removable<Row> {
  findUnique: (args: { where: { id: string } }) => PromiseLike<Row | null>
  deleteMany: (args: { where: RowSeen }) => Count
}

/** Takes a row out for good; its audit line keeps what stood there. @throws Refusal `stale` where it was changed. */
export async function removeRow<Row extends object>(
  audit: Audit,
  kept: Kept<Removable<Row>>,
  { id, version }: RowSeen,
): Promise<void> {
  const row = await kept.table.findUnique({ where: { id } })
  await saved(kept, id, kept.table.deleteMany({ where: { id, version } }))
  note(audit, kept, { act: 'removed', id, detail: changesBetween({}, row ?? {}) })
}

interface Ordered {
  findMany: (args: { where: { archivedAt: null }; select: { id: true } }) => PromiseLike<{ id: string }[]>
  update: (args: { where: { id: string }; data: { position: number } }) => PromiseLike<object>
}

/** Puts the rows in use in the order given. @throws Refusal `stale` where it leaves one out or names one twice. */
export async function orderRows(audit: Audit, kept: Kept<Ordered>, ids: readonly string[]): Promise<void> {
  const rows = await kept.table.findMany({ where: { archivedAt: null }, select: { id: true } })
  checkOrder(
    ids,
    rows.map(row => row.id),
  )
  for (const [position, id] of ids.entries()) await kept.table.update({ where: { id }, data: { position } })
  audit({ act: 'ordered', entity: kept.entity, entityId: '', detail: { ids: [...ids] } })
}

/** What a list shows: the rows in use, or, where asked for, those put away behind them; each in `order`. */
export function rowsShown<Order extends object>(input: ListInput, ...order: Order[]) {
  const where: { archivedAt?: null } = input?.archived ? {} : { archivedAt: null }
  return { where, orderBy: [{ archivedAt: { sort: 'asc', nulls: 'first' } as const }, ...order] }
}

/** The place behind all others, archived ones too. */
export async function lastPosition(table: {
  findFirst: (args: { orderBy: { position: 'desc' } }) => PromiseLike<{ position: number } | null>
}): Promise<number> {
  return ((await table.findFirst({ orderBy: { position: 'desc' } }))?.position ?? -1) + 1
}

interface Named {
  findMany: (args: {
    where: { archivedAt: null; NOT: { id: string } }
    select: { name: true }
  }) => PromiseLike<{ name: string }[]>
}

/** Refuses a name that another row in use bears, capitals aside. `what` as in "a bay". */
export async function assertNameFree(
  table: Named,
  { id = '', name }: { id?: string | undefined; name: string },
  what: string,
): Promise<void> {
  const others = await table.findMany({ where: { archivedAt: null, NOT: { id } }, select: { name: true } })
  checkUnique([...others.map(other => other.name), name], () => 'name', what)
}

/** Refuses an order that leaves one out, names one twice or names a stranger: the list has changed meanwhile. */
function checkOrder(ids: readonly string[], present: readonly string[]): void {
  const once = new Set(ids)
  const same = once.size === ids.length && once.size === present.length && present.every(id => once.has(id))
  if (!same)
    refuse(
      'stale',
      { ids },
      say('The list has changed meanwhile: look at it again, then repeat your change.'),
    )
}

function stepped<Data extends object>(data: Data): Stepped<Data> {
  return { ...data, version: { increment: 1 } }
}

async function saved(kept: Kept<unknown>, id: string, writing: Count): Promise<void> {
  assertFresh((await writing).count, kept.noun ?? kept.entity, id)
}

function note(
  audit: Audit,
  { entity, noun = entity, partOf }: Kept<unknown>,
  { act, id, detail = {} }: { act: string; id: string; detail?: JsonObject },
): void {
  if (partOf === undefined) audit({ act, entity, entityId: id, detail })
  else audit({ act: `${noun} ${act}`, entity, entityId: partOf, detail: { [`${noun}Id`]: id, ...detail } })
}

/** What was written as an audit line keeps it: an emptied JSON column is null there. */
function written(data: object): JsonObject {
  return Object.fromEntries(
    Object.entries(data).map(([field, value]) => [field, value === noJson ? null : value]),
  )
}
