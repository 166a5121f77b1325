/** Two entries of one person made one, in one act, and taken apart again as they were. */

import { momentWords } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkTags } from '../../domain/shop/index.ts'
import { fromJson, toJson } from '../../store/json.ts'
import type { Customer, OwnerReach } from '../../store/rows.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import type { MergeInput } from './inputs.ts'
import { backTo, type Moved, moveRows } from './mergeRows.ts'

/** How both entries were; `merged` is what the one that stays was given. */
interface MergedBefore {
  readonly kept: Customer
  readonly gone: Customer
  readonly merged: Entry
  readonly mergedVersion: number
  readonly keptReach: OwnerReach | null
  readonly mergedReach: OwnerReach | null
}

/** What of a customer's row a merge may change. */
type Entry = Pick<Customer, 'name' | 'phone' | 'email' | 'note' | 'kind'> & { tags: string[] }

/**
 * Makes two entries one: cars, visits, consent, messages and contacts of the second go to the first, which is given what
 * was chosen; the rest of the second is noted there, and it is put away. Refused where either was changed meanwhile.
 */
export function mergeCustomers(desk: Desk, input: MergeInput): Promise<{ id: string }> {
  return act(desk, async (tx, audit, at) => {
    const { kept: keptSeen, gone: goneSeen, take } = input
    if (keptSeen.id === goneSeen.id)
      refuse('same', { gone: goneSeen.id }, say('These are one and the same entry; choose another.'))
    const kept = await inUse(tx, keptSeen.id, 'kept')
    const gone = await inUse(tx, goneSeen.id, 'gone')
    const sides = { kept, gone }
    const chosen = <K extends 'name' | 'phone' | 'email'>(field: K) =>
      sides[take[field]][field] || sides[take[field] === 'kept' ? 'gone' : 'kept'][field]
    const merged: Entry = {
      name: chosen('name') || kept.name,
      phone: chosen('phone') || null,
      email: chosen('email') || null,
      kind: kept.kind === 'person' ? gone.kind : kept.kind,
      tags: checkTags([...fromJson<string[]>(kept.tags), ...fromJson<string[]>(gone.tags)].slice(0, 20)),
      note: '',
    }
    merged.note = noteOf(kept, gone, merged)
    const leap = 1 + 1000 * (1 + (await tx.merge.count()))
    // No later edit of the entry as it was reaches this number: a window that shows the two as one is stale once they
    // are taken apart, although that puts the old number back.
    const mergedVersion = keptSeen.version + leap
    const { count } = await tx.customer.updateMany({
      where: keptSeen,
      data: { ...merged, version: mergedVersion },
    })
    assertFresh(count, 'customer', kept.id)
    const put = await tx.customer.updateMany({
      where: goneSeen,
      data: { archivedAt: at, version: goneSeen.version + leap },
    })
    assertFresh(put.count, 'customer', gone.id)
    const keptReach = await tx.ownerReach.findUnique({ where: { customerId: kept.id } })
    const mergedReach = await mergeReach(tx, { kept: kept.id, gone: gone.id, keptReach, take, leap })
    const moved = await moveRows(tx, gone.id, kept.id)
    const before: MergedBefore = { kept, gone, merged, mergedVersion, keptReach, mergedReach }
    const { id } = await tx.merge.create({
      data: {
        keptId: kept.id,
        goneId: gone.id,
        at,
        who: desk.who,
        before: toJson(before),
        moved: toJson(moved),
      },
    })
    const detail = { goneId: gone.id, ...countsOf(moved) }
    audit({ act: 'made one with', entity: 'customer', entityId: kept.id, detail })
    audit({ act: 'made one with', entity: 'customer', entityId: gone.id, detail: { keptId: kept.id } })
    return { id }
  })
}

async function inUse(tx: Tx, id: string, field: string): Promise<Customer> {
  return found(
    await tx.customer.findFirst({ where: { id, archivedAt: null } }),
    { [field]: id },
    say('This customer is put away or not there; look them up again.'),
  )
}

/** Both notes, and what of the second entry stands nowhere else. */
function noteOf(kept: Customer, gone: Customer, merged: Entry): string {
  const also = [kept, gone]
    .flatMap(each => [each.name, each.phone, each.email])
    .filter(text => text && text !== merged.name && text !== merged.phone && text !== merged.email)
  const once = [...new Set(also)]
  const lines = [kept.note, gone.note, once.length > 0 ? say('Also: {once}', { once: once.join(', ') }) : '']
  return lines
    .map(line => line.trim())
    .filter(Boolean)
    .join('\n')
    .slice(0, 2_000)
}

interface Reaches {
  kept: string
  gone: string
  keptReach: OwnerReach | null
  take: MergeInput['take']
  leap: number
}

/** Language, zone and postal address: those chosen, or the only ones there are. */
async function mergeReach(
  tx: Tx,
  { kept, gone, keptReach, take, leap }: Reaches,
): Promise<OwnerReach | null> {
  const theirs = await tx.ownerReach.findUnique({ where: { customerId: gone } })
  if (!theirs || (keptReach && (take.postal === 'kept' || theirs.postal === ''))) return keptReach
  const { customerId: _, version: __, ...fields } = theirs
  return tx.ownerReach.upsert({
    where: { customerId: kept },
    create: { customerId: kept, ...fields, version: leap },
    update: { ...fields, version: (keptReach?.version ?? 0) + leap },
  })
}

const countsOf = (moved: Moved) =>
  Object.fromEntries(
    Object.entries(moved).flatMap(([table, ids]) => (ids.length === 0 ? [] : [[table, ids.length]])),
  )

/**
 * Takes two entries apart: every row goes back where it was, and both entries are as they were, but for what somebody has
 * changed since, which stays with the one it was changed on.
 */
export function undoMerge(desk: Desk, input: { id: string }): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const merge = found(
      await tx.merge.findFirst({ where: { id: input.id, undoneAt: null } }),
      { id: input.id },
      say('These entries were taken apart already; look at the customer again.'),
    )
    const { keptId, goneId } = merge
    await assertLast(tx, merge)
    if ((await tx.erasure.count({ where: { customerId: { in: [keptId, goneId] } } })) > 0)
      refuse(
        'erased-already',
        { id: input.id },
        say('This person was erased; there is nothing to take apart.'),
      )
    const before = fromJson<MergedBefore>(merge.before)
    await backTo(tx, fromJson<Moved>(merge.moved), { from: keptId, to: goneId })
    await restoreEntry(tx, before)
    await restoreReach(tx, keptId, before)
    const gone = await tx.customer.findUniqueOrThrow({ where: { id: goneId } })
    const put = gone.archivedAt === merge.at
    await tx.customer.update({
      where: { id: goneId },
      data: put
        ? { archivedAt: before.gone.archivedAt, version: before.gone.version }
        : { version: { increment: 1 } },
    })
    await tx.merge.update({ where: { id: merge.id }, data: { undoneAt: at } })
    audit({ act: 'taken apart from', entity: 'customer', entityId: keptId, detail: { goneId } })
    audit({ act: 'taken apart from', entity: 'customer', entityId: goneId, detail: { keptId } })
  })
}

/** Merges are undone from the last one back, or rows would go to an entry that is no more. */
async function assertLast(tx: Tx, { id, keptId, goneId }: { id: string; keptId: string; goneId: string }) {
  const either = { in: [keptId, goneId] }
  const later = await tx.merge.findFirst({
    where: { id: { gt: id }, undoneAt: null, OR: [{ keptId: either }, { goneId: either }] },
    orderBy: { id: 'desc' },
  })
  if (!later) return
  const { zone } = await shopOf(tx)
  refuse(
    'merged-since',
    { id },
    say('One of them was merged with another entry on {at}; separate those first.', {
      at: momentWords(later.at, zone),
    }),
  )
}

async function restoreEntry(tx: Tx, { kept, merged, mergedVersion }: MergedBefore): Promise<void> {
  const now = await tx.customer.findUniqueOrThrow({ where: { id: kept.id } })
  const same = (field: keyof Entry) => JSON.stringify(now[field]) === JSON.stringify(merged[field])
  const fields = (Object.keys(merged) as (keyof Entry)[]).filter(same)
  await tx.customer.update({
    where: { id: kept.id },
    data: {
      ...Object.fromEntries(fields.map(field => [field, kept[field]])),
      version: now.version === mergedVersion ? kept.version : { increment: 1 },
    },
  })
}

async function restoreReach(tx: Tx, customerId: string, before: MergedBefore): Promise<void> {
  const { keptReach, mergedReach } = before
  if (JSON.stringify(keptReach) === JSON.stringify(mergedReach)) return
  const now = await tx.ownerReach.findUnique({ where: { customerId } })
  if (JSON.stringify(now) !== JSON.stringify(mergedReach)) return
  if (keptReach === null) await tx.ownerReach.delete({ where: { customerId } })
  else await tx.ownerReach.update({ where: { customerId }, data: keptReach })
}
