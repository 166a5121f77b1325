import { momentWords } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { type Capability, checkBay, checkOffers, meetsNeeds } from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst, listed } from '../desk/ask.ts'
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
import { shopOf } from '../desk/shopView.ts'
import { comingJobs, comingStays, jobWords, touchedLines, touchedSteps } from '../floor/comingJobs.ts'
import type { BayInput } from './inputs.ts'

export type BayView = Awaited<ReturnType<typeof listBays>>[number]

const bays = (tx: Tx) => ({ table: tx.bay, entity: 'bay' })

/** The bays in the order of the board, each with its closures that are not over; archived ones only when asked for. */
export async function listBays(desk: Desk, input?: ListInput) {
  const rows = await desk.store.read.bay.findMany({
    ...rowsShown(input, { position: 'asc' }, { id: 'asc' }),
    include: { closures: { where: { toAt: { gt: desk.now() } }, orderBy: { fromAt: 'asc' } } },
  })
  return rows.map(({ position: _, ...bay }) => ({
    ...bay,
    capabilities: bay.capabilities as Capability[],
    offers: bay.offers as string[],
    closures: bay.closures.map(({ bayId: _, ...closure }) => closure),
  }))
}

/** Adds a bay, or changes one. Taking away what a booked step needs there is refused until it is `accepted`. */
export function saveBay(desk: Desk, input: BayInput): Promise<{ id: string }> {
  const { capabilities } = input
  const offers = input.offers && checkOffers(input.offers, 'offers')
  const data = { name: checkBay(input), capabilities, ...(offers && { offers }) }
  return act(desk, async (tx, audit, at) => {
    await assertNameFree(tx.bay, { id: input.id, name: data.name }, say('a bay'))
    const added = { position: await lastPosition(tx.bay) }
    const { id, before } = await saveRow(audit, bays(tx), input, { data, added })
    const offered = (before?.offers ?? []) as string[]
    const had = [...((before?.capabilities ?? []) as string[]), ...offered]
    const has: string[] = [...capabilities, ...(offers ?? offered)]
    // What it could not do before either, a move by hand has put there.
    const lost = (needs: string) => meetsNeeds(had, needs) && !meetsNeeds(has, needs)
    const { zone } = await shopOf(tx)
    const touched = touchedSteps(
      await comingJobs(tx, at),
      zone,
      step => step.bayId === id && lost(step.needs),
    )
    askFirst('touches-bookings', touchedLines(touched), {
      field: 'capabilities',
      lead: say('{name} could no longer do what is booked there:', { name: data.name }),
      accepted: input.accepted,
    })
    return { id }
  })
}

/** Puts a bay away, out of the board and of every offer. Refused while cars are booked into it, which it names. */
export function archiveBay(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const { id } = input
    const lines = await stayLines(tx, at, id, at, Number.POSITIVE_INFINITY)
    if (lines.length > 0)
      refuse(
        'bay-booked',
        { id },
        listed(say('Cars are booked into this bay; move them to another first:'), lines),
      )
    if ((await tx.bay.count({ where: { archivedAt: null, NOT: { id } } })) === 0)
      refuse('bay-last', { id }, say('This is the only bay; add another before putting it away.'))
    await archiveRow(audit, bays(tx), input, { at })
  })
}

/** Takes an archived bay back into use, at the end of the board. */
export function restoreBay(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit) => {
    await restoreRow(audit, bays(tx), input, { position: await lastPosition(tx.bay) })
    await assertNameFree(tx.bay, await tx.bay.findUniqueOrThrow({ where: { id: input.id } }), say('a bay'))
  })
}

/** Puts the bays in the order given; every bay in use once. */
export function orderBays(desk: Desk, input: { ids: string[] }): Promise<void> {
  return act(desk, (tx, audit) => orderRows(audit, bays(tx), input.ids))
}

/** A line for each car booked to stand in the bay somewhere in `[fromAt, toAt)`. */
export async function stayLines(
  tx: Tx,
  nowAt: number,
  bayId: string,
  fromAt: number,
  toAt: number,
): Promise<string[]> {
  const { zone } = await shopOf(tx)
  return (await comingJobs(tx, nowAt)).flatMap(job =>
    comingStays(job, nowAt)
      .filter(stay => stay.bayId === bayId && stay.from < toAt && fromAt < stay.to)
      .map(stay =>
        say('{job}: {from} to {to}', {
          job: jobWords(job),
          from: momentWords(stay.from, zone),
          to: momentWords(stay.to, zone),
        }),
      ),
  )
}
