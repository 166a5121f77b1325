/** The rows that belong to a customer and change sides with them. */
import type { Tx } from '../../store/store.ts'

/** The ids of the rows that changed sides, by table and column. */
export interface Moved {
  readonly vehicles: readonly string[]
  readonly jobs: readonly string[]
  readonly consents: readonly string[]
  readonly messages: readonly string[]
  readonly contacts: readonly string[]
  readonly gave: readonly string[]
  readonly took: readonly string[]
  /** Of the contacts, who was to be called first on the side they came from. */
  readonly calledFirst: readonly string[]
}

const idsOf = (rows: readonly { id: string }[]) => rows.map(({ id }) => id)

/** Gives all rows of one customer to another. */
export async function moveRows(tx: Tx, from: string, to: string): Promise<Moved> {
  const theirs = { where: { customerId: from }, select: { id: true } } as const
  const first = { where: { customerId: from, callFirst: true }, select: { id: true } }
  // Whom to call first is the one of the entry that stays, where it has one.
  const hasFirst = (await tx.contact.count({ where: { customerId: to, callFirst: true } })) > 0
  const moved: Moved = {
    vehicles: idsOf(await tx.vehicle.findMany(theirs)),
    jobs: idsOf(await tx.job.findMany(theirs)),
    consents: idsOf(await tx.consent.findMany(theirs)),
    messages: idsOf(await tx.message.findMany(theirs)),
    contacts: idsOf(await tx.contact.findMany(theirs)),
    gave: idsOf(await tx.ownerChange.findMany({ where: { fromId: from }, select: { id: true } })),
    took: idsOf(await tx.ownerChange.findMany({ where: { toId: from }, select: { id: true } })),
    calledFirst: hasFirst ? idsOf(await tx.contact.findMany(first)) : [],
  }
  await setSide(tx, moved, { from, to })
  if (moved.calledFirst.length > 0)
    await tx.contact.updateMany({
      where: { id: { in: [...moved.calledFirst] } },
      data: { callFirst: false },
    })
  return moved
}

/** Gives the rows back, those that have not gone on to somebody else since. */
export async function backTo(tx: Tx, moved: Moved, sides: { from: string; to: string }): Promise<void> {
  await setSide(tx, moved, sides)
  if (moved.calledFirst.length > 0)
    await tx.contact.updateMany({
      where: { id: { in: [...moved.calledFirst] }, customerId: sides.to },
      data: { callFirst: true },
    })
}

async function setSide(tx: Tx, moved: Moved, { from, to }: { from: string; to: string }): Promise<void> {
  for (const ids of pieces(moved.vehicles)) await tx.vehicle.updateMany(side(ids, from, to))
  for (const ids of pieces(moved.jobs)) await tx.job.updateMany(side(ids, from, to))
  for (const ids of pieces(moved.consents)) await tx.consent.updateMany(side(ids, from, to))
  for (const ids of pieces(moved.messages)) await tx.message.updateMany(side(ids, from, to))
  for (const ids of pieces(moved.contacts)) await tx.contact.updateMany(side(ids, from, to))
  for (const ids of pieces(moved.gave))
    await tx.ownerChange.updateMany({ where: { id: { in: ids }, fromId: from }, data: { fromId: to } })
  for (const ids of pieces(moved.took))
    await tx.ownerChange.updateMany({ where: { id: { in: ids }, toId: from }, data: { toId: to } })
}

const side = (ids: string[], from: string, to: string) => ({
  where: { id: { in: ids }, customerId: from },
  data: { customerId: to },
})

/** SQLite takes a thousand values at once. */
function pieces(ids: readonly string[]): string[][] {
  return Array.from({ length: Math.ceil(ids.length / 500) }, (_, i) => ids.slice(i * 500, i * 500 + 500))
}
