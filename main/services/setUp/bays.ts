import { Refusal } from '../../domain/refusal.ts'
import { type Capability, checkBay, checkUnique } from '../../domain/shop/index.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import { momentWords } from '../desk/momentWords.ts'
import { checkOrder } from '../desk/order.ts'
import { shopOf } from '../desk/shopView.ts'
import {
  assertTold,
  comingJobs,
  comingStays,
  jobWords,
  listed,
  touchedLines,
  touchedSteps,
} from '../floor/comingJobs.ts'

export interface BayView {
  id: string
  name: string
  capabilities: Capability[]
  closures: { id: string; fromAt: number; toAt: number; reason: string; version: number }[]
  archivedAt: number | null
  version: number
}

/** The bays in the order of the board, each with its closures that are not over; archived ones only when asked for. */
export async function listBays(desk: Desk, input?: { archived?: boolean | undefined }): Promise<BayView[]> {
  const rows = await desk.store.read.bay.findMany({
    where: input?.archived ? {} : { archivedAt: null },
    orderBy: [{ archivedAt: { sort: 'asc', nulls: 'first' } }, { position: 'asc' }, { id: 'asc' }],
    include: { closures: { where: { toAt: { gt: desk.now() } }, orderBy: { fromAt: 'asc' } } },
  })
  return rows.map(({ position: _, ...bay }) => ({
    ...bay,
    capabilities: bay.capabilities as unknown as Capability[],
    closures: bay.closures.map(({ bayId: _, ...closure }) => closure),
  }))
}

export interface BayInput {
  id?: string | undefined
  version?: number | undefined
  name: string
  capabilities: Capability[]
  accepted?: boolean | undefined
}

/** Adds a bay, or changes one. Taking away what a booked step needs there is refused until it is `accepted`. */
export async function saveBay(desk: Desk, input: BayInput): Promise<{ id: string }> {
  const name = checkBay(input)
  const data = { name, capabilities: input.capabilities }
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const others = await tx.bay.findMany({ where: { archivedAt: null, NOT: { id: input.id ?? '' } } })
    checkUnique([...others.map(bay => bay.name), name], () => 'name', 'a bay')
    if (input.id === undefined) {
      const position = (await tx.bay.aggregate({ _max: { position: true } }))._max.position ?? -1
      const { id } = await tx.bay.create({ data: { ...data, position: position + 1 } })
      audit({ act: 'added', entity: 'bay', entityId: id, detail: data })
      return { id }
    }
    const { id } = input
    const before = await tx.bay.findUnique({ where: { id } })
    const { count } = await tx.bay.updateMany({
      where: { id, version: input.version ?? 0 },
      data: { ...data, version: { increment: 1 } },
    })
    assertFresh(count, 'bay', id)
    const { zone } = await shopOf(tx)
    const lost = (before!.capabilities as string[]).filter(
      can => !data.capabilities.includes(can as Capability),
    )
    const touched = touchedSteps(
      await comingJobs(tx, desk.now()),
      zone,
      step => step.bayId === id && lost.includes(step.needs),
    )
    assertTold(
      touchedLines(touched),
      input.accepted,
      'capabilities',
      `${name} could no longer do what is booked there:`,
    )
    audit({ act: 'changed', entity: 'bay', entityId: id, detail: changesBetween(before!, data) })
    return { id }
  })
}

/** Puts a bay away, out of the board and of every offer. Refused while cars are booked into it, which it names. */
export async function archiveBay(desk: Desk, input: { id: string; version: number }): Promise<void> {
  const at = desk.now()
  await desk.store.transact({ who: desk.who, at }, async (tx, audit) => {
    const lines = await stayLines(tx, at, input.id, at, Number.POSITIVE_INFINITY)
    if (lines.length > 0)
      throw new Refusal(
        'bay-booked',
        'id',
        input.id,
        listed('Cars are booked into this bay; move them to another first:', lines),
      )
    if ((await tx.bay.count({ where: { archivedAt: null, NOT: { id: input.id } } })) === 0)
      throw new Refusal(
        'bay-last',
        'id',
        input.id,
        'This is the only bay; add another before putting it away.',
      )
    const { count } = await tx.bay.updateMany({
      where: { ...input, archivedAt: null },
      data: { archivedAt: at, version: { increment: 1 } },
    })
    assertFresh(count, 'bay', input.id)
    audit({ act: 'archived', entity: 'bay', entityId: input.id })
  })
}

/** Takes an archived bay back into use, at the end of the board. */
export async function restoreBay(desk: Desk, input: { id: string; version: number }): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const bays = await tx.bay.findMany()
    const bay = bays.find(each => each.id === input.id)
    const used = bays.filter(each => each.archivedAt === null)
    if (bay) checkUnique([...used.map(each => each.name), bay.name], () => 'name', 'a bay')
    const { count } = await tx.bay.updateMany({
      where: { ...input, NOT: { archivedAt: null } },
      data: {
        archivedAt: null,
        position: Math.max(-1, ...bays.map(each => each.position)) + 1,
        version: { increment: 1 },
      },
    })
    assertFresh(count, 'bay', input.id)
    audit({ act: 'restored', entity: 'bay', entityId: input.id })
  })
}

/** Puts the bays in the order given; every bay in use once. */
export async function orderBays(desk: Desk, input: { ids: string[] }): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const bays = await tx.bay.findMany({ where: { archivedAt: null }, select: { id: true } })
    checkOrder(
      input.ids,
      bays.map(bay => bay.id),
    )
    for (const [position, id] of input.ids.entries())
      await tx.bay.update({ where: { id }, data: { position } })
    audit({ act: 'ordered', entity: 'bay', entityId: '', detail: { ids: input.ids } })
  })
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
      .map(stay => `${jobWords(job)}: ${momentWords(stay.from, zone)} to ${momentWords(stay.to, zone)}`),
  )
}
