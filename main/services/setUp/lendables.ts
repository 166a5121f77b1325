/** The things a shop lends with a booking: loan cars, key boxes, places under cover. */
import { say, word } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkText, type LentKind } from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import { listed } from '../desk/ask.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { ListInput } from '../desk/inputs.ts'
import {
  archiveRow,
  assertNameFree,
  lastPosition,
  orderRows,
  type RowSeen,
  restoreRow,
  rowsShown,
  saveRow,
} from '../desk/keep.ts'
import { comingJobs, jobWords } from '../floor/comingJobs.ts'
import type { LendableInput } from './inputs.ts'

export type LendableView = Awaited<ReturnType<typeof listLendables>>[number]

const lendables = (tx: Tx) => ({ table: tx.lendable, entity: 'lendable', noun: word('thing to lend') })

/** The things in their order; archived ones only when asked for. */
export async function listLendables(desk: Desk, input?: ListInput) {
  const rows = await desk.store.read.lendable.findMany({
    ...rowsShown(input, { position: 'asc' }, { id: 'asc' }),
  })
  return rows.map(({ position: _, kind, ...row }) => ({ ...row, kind: kind as LentKind }))
}

/** Adds a thing, or changes one. What is lent with a booking stays the kind it was lent as. */
export function saveLendable(desk: Desk, input: LendableInput): Promise<{ id: string }> {
  return act(desk, async (tx, audit, at) => {
    const data = { name: checkText(input.name, 'name', say('Its name'), 60), kind: input.kind }
    await assertNameFree(tx.lendable, { id: input.id, name: data.name }, say('a thing'))
    const added = { position: await lastPosition(tx.lendable) }
    const { id, before } = await saveRow(audit, lendables(tx), input, { data, added })
    if (before && before.kind !== data.kind)
      await assertNotLent(
        tx,
        at,
        id,
        'kind',
        say('It is booked as what it is; take it back from these jobs first:'),
      )
    return { id }
  })
}

/** Puts a thing away. Refused while it is booked. */
export function archiveLendable(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    await assertNotLent(tx, at, input.id, 'id', say('It is booked; take it back from these jobs first:'))
    await archiveRow(audit, lendables(tx), input, { at })
  })
}

/** Takes a thing back into use, last in order. */
export function restoreLendable(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit) => {
    await restoreRow(audit, lendables(tx), input, { position: await lastPosition(tx.lendable) })
    const row = await tx.lendable.findUniqueOrThrow({ where: { id: input.id } })
    await assertNameFree(tx.lendable, row, say('a thing'))
  })
}

/** Puts the things in the order given; each in use once. */
export function orderLendables(desk: Desk, input: { ids: string[] }): Promise<void> {
  return act(desk, (tx, audit) => orderRows(audit, lendables(tx), input.ids))
}

async function assertNotLent(tx: Tx, at: number, id: string, field: string, lead: string): Promise<void> {
  const jobs = await comingJobs(tx, at, { loans: { some: { lendableId: id } } })
  if (jobs.length > 0) refuse('still-lent', { [field]: id }, listed(lead, jobs.map(jobWords)))
}
