/** Who did what when, of one thing or of the whole shop. Nothing here writes. */
import { dateOf, startOfDay } from '../../domain/calendar/index.ts'
import { sayLine } from '../../domain/history/index.ts'
import { wordsIn } from '../../store/auditRows.ts'
import type { AuditLine } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import { takeBackMin } from '../../store/undo/followed.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { factsOf } from './facts.ts'
import type { HistoryFilter, HistoryInput } from './inputs.ts'

export type HistoryLine = Awaited<ReturnType<typeof inWords>>[number]

/** A page of lines, newest first, and where the next begins; null: that was all. */
export async function history(desk: Desk, { cursor, limit = 50, ...filter }: HistoryInput) {
  const { read } = desk.store
  const rows = await page(read, filter, cursor ?? null, limit + 1)
  const lines = rows.slice(0, limit)
  const last = rows.length > limit ? lines.at(-1) : undefined
  return {
    lines: await inWords(read, lines, desk.now()),
    nextCursor: last ? { at: last.at, id: last.id } : null,
  }
}

/** What there is to choose from: who ever did something, what, and to what kind of thing. */
export async function historyChoices(desk: Desk) {
  const { read } = desk.store
  const [who, acts, entities] = await Promise.all(
    (['who', 'act', 'entity'] as const).map(column => wordsIn(read, column)),
  )
  return { who: who!, acts: acts!, entities: entities! }
}

type Cursor = { at: number; id: string } | null

async function page(tx: Tx, filter: HistoryFilter, cursor: Cursor, take: number): Promise<AuditLine[]> {
  const { zone } = await shopOf(tx)
  const { entities, entityId, who, act, fromDate, toDate } = filter
  const dayAfter = toDate && Temporal.PlainDate.from(toDate).add({ days: 1 }).toString()
  return tx.auditLine.findMany({
    where: {
      ...(entities && { entity: entities.length === 1 ? entities[0]! : { in: entities } }),
      ...(entityId !== undefined && { entityId }),
      ...(who !== undefined && { who }),
      ...(act !== undefined && { act }),
      AND: [
        fromDate ? { at: { gte: startOfDay(fromDate, zone) } } : {},
        dayAfter ? { at: { lt: startOfDay(dayAfter, zone) } } : {},
        cursor ? { at: { lte: cursor.at }, OR: [{ at: { lt: cursor.at } }, { id: { lt: cursor.id } }] } : {},
      ],
    },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take,
  })
}

async function inWords(tx: Tx, rows: readonly AuditLine[], nowAt: number) {
  const facts = await factsOf(tx, rows, nowAt)
  const standing = await standingActs(tx, rows, nowAt)
  return rows.map(row => ({
    id: row.id,
    at: row.at,
    when: facts.when(row.at),
    who: row.who,
    entity: row.entity,
    entityId: row.entityId,
    /** What the thing is called; null where it has no name, or is gone. */
    name: facts.nameOf(row.entityId) ?? null,
    words: sayLine(row, facts),
    /** The act it was a part of, where that may still be taken back; null: it may not. */
    actId: row.actId !== null && standing.has(row.actId) ? row.actId : null,
  }))
}

/** Acts of these lines that stand, were followed, and are not a day old. */
async function standingActs(tx: Tx, rows: readonly AuditLine[], nowAt: number): Promise<ReadonlySet<number>> {
  const ids = new Set(rows.flatMap(row => row.actId ?? []))
  if (ids.size === 0) return new Set()
  const acts = await tx.act.findMany({
    where: {
      id: { in: [...ids] },
      at: { gte: nowAt - takeBackMin },
      takenBackById: null,
      takesBackId: null,
      rows: { not: null },
    },
    select: { id: true },
  })
  return new Set(acts.map(act => act.id))
}

/** All lines that fit, page by page, for a file. */
export async function* everyLine(desk: Desk, filter: HistoryFilter): AsyncGenerator<HistoryLine[]> {
  for (let cursor: Cursor = null; ; ) {
    const { lines, nextCursor } = await history(desk, { ...filter, cursor, limit: 200 })
    yield lines
    if (nextCursor === null) return
    cursor = nextCursor
  }
}

/** The day the file is made on, for its name. */
export async function todayOf(desk: Desk): Promise<string> {
  return dateOf(desk.now(), (await shopOf(desk.store.read)).zone)
}
