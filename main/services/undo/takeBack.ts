/**
 * One act taken back: every row it changed stands again as it did before, as a new act with lines of its own. Refused in
 * words where something outside has happened, where a later act stands on it, or where its place was taken meanwhile.
 */
import { datedWords } from '../../domain/calendar/index.ts'
import { barOf, type ChangedRow, sayLine, wayBack } from '../../domain/history/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, Refusal, refuse } from '../../domain/refusal.ts'
import { type JsonObject, toJson } from '../../store/json.ts'
import type { Act, AuditLine } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import { takeBackMin } from '../../store/undo/followed.ts'
import {
  changedSince,
  columnsOf,
  type FollowedRow,
  keyOf,
  plainOf,
  putRowBack,
  rowsOfAct,
} from '../../store/undo/restoreRows.ts'
import type { Audit, Desk } from '../desk/desk.ts'
import { stampOf } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { factsOf } from '../history/facts.ts'
import { assertStandsAgain, floorBefore } from './floorAgain.ts'
import type { TakeBackInput } from './inputs.ts'
import { counterMoves } from './ledger.ts'

export interface TakenBackView {
  /** What was taken back, in words. */
  words: string
  /** By which it can be put again. */
  actId: number | null
}

/** Takes back the act named, or the last of this desk that stands. */
export async function takeBack(desk: Desk, { actId }: TakeBackInput): Promise<TakenBackView> {
  const { read } = desk.store
  const act = await (actId === undefined ? lastOf(desk, read) : oneAct(read, actId))
  const stamp = { ...stampOf(desk), takesBackId: act.id }
  const words = await desk.store.transact(stamp, async (tx, audit) => {
    const now = await tx.act.findUnique({ where: { id: act.id } })
    return takeBackIn(desk, tx, audit, found(now, { actId: act.id }, goneWords()))
  })
  const undone = await read.act.findFirst({ where: { takesBackId: act.id }, orderBy: { id: 'desc' } })
  return { words, actId: undone?.rows == null ? null : undone.id }
}

const goneWords = () => say('What was done is older than a day, and stands; change it where it is shown.')

async function lastOf(desk: Desk, tx: Tx): Promise<Act> {
  const act = await tx.act.findFirst({
    where: {
      deskId: desk.deskId ?? '',
      takesBackId: null,
      takenBackById: null,
      at: { gte: desk.now() - takeBackMin },
    },
    orderBy: { id: 'desc' },
  })
  if (!act)
    refuse('nothing', { actId: null }, say('Nothing done at this desk in the last day is left to undo.'))
  return act
}

async function oneAct(tx: Tx, actId: number): Promise<Act> {
  return found(await tx.act.findUnique({ where: { id: actId } }), { actId }, goneWords())
}

async function takeBackIn(desk: Desk, tx: Tx, audit: Audit, act: Act): Promise<string> {
  const nowAt = desk.now()
  const lines = await linesOf(tx, act)
  const what = await wordsOf(tx, nowAt, lines)
  const no = (code: string, why: string): never =>
    refuse(code, { actId: act.id }, say('"{what}" is not taken back. {why}', { what, why }))
  if (act.at < nowAt - takeBackMin) no('too-old', goneWords())
  if (act.takenBackById !== null) no('taken-back', say('It was taken back already.'))
  if (act.rows === null)
    no('not-followed', say('It changed too much to be undone here; undo it where it was done.'))
  // A note stands in the history alone, and so does that it was taken back.
  if (act.rows === 0 && !lines.some(line => line.act === 'noted'))
    no('outside', say('It changed nothing here that could be put back.'))
  const rows = await rowsOfAct(tx, act.id)
  const bars = (of: readonly FollowedRow[]) => barOf(of.map(row => changedRow(desk, row)))
  const bar = bars(rows)
  if (bar !== null) no('outside', say(bar))
  const laterId = await changedSince(tx, act.id)
  if (laterId !== null) {
    // A mail given to the outbox has left since: nobody can take that back first.
    const left = bars(await rowsOfAct(tx, laterId))
    if (left !== null) no('outside', say(left))
    no('stands-on-it', await laterWords(tx, nowAt, laterId))
  }
  const before = await floorBefore(tx, nowAt, act.id, rows)
  await putBack(desk, tx, rows, no)
  await assertStandsAgain(tx, nowAt, before, why => no('taken', why))
  await relink(tx, act)
  for (const line of lines) audit(undoneLine(line, act))
  return what
}

function changedRow(desk: Desk, { table, before, after }: FollowedRow): ChangedRow {
  const watched = desk.store.watched.get(table)
  const kept = after !== null && watched ? columnsOf(watched, after) : {}
  return {
    table,
    how: before === null ? 'added' : after === null ? 'removed' : 'changed',
    after: Object.fromEntries(
      ['state', 'channel'].flatMap(column => (column in kept ? [[column, plainOf(kept[column])]] : [])),
    ),
  }
}

async function putBack(
  desk: Desk,
  tx: Tx,
  rows: readonly FollowedRow[],
  no: (code: string, why: string) => never,
): Promise<void> {
  const changed = () => no('stands-on-it', say('What it changed has been changed again since.'))
  const moves = rows.filter(row => wayBack(changedRow(desk, row)) === 'counter')
  const bottles = await counterMoves(desk, tx, moves, why => no('outside', why))
  for (const row of rows) {
    const table = desk.store.watched.get(row.table)
    if (!table || wayBack(changedRow(desk, row)) !== 'back') continue
    // A bottle that came in stays with its moves in the ledger, emptied by what was set against them.
    if (row.before === null && row.table === 'Lot' && bottles.has(keyOf(row.key))) continue
    try {
      if (!(await putRowBack(tx, table, row))) changed()
    } catch (error) {
      if (error instanceof Refusal) throw error
      // A link of a row added since: the database will not let go of what it points to.
      no('stands-on-it', say('Something that was added since belongs to it.'))
    }
  }
}

/** An act taken back stands no more; one whose taking back is taken back stands again. */
async function relink(tx: Tx, act: Act): Promise<void> {
  const [next] = await tx.$queryRaw<{ id: number | bigint }[]>`
    select coalesce(max("seq"), 0) + 1 as "id" from "sqlite_sequence" where "name" = 'Act'`
  await tx.act.update({ where: { id: act.id }, data: { takenBackById: Number(next?.id) } })
  if (act.takesBackId !== null)
    await tx.act.updateMany({ where: { id: act.takesBackId }, data: { takenBackById: null } })
}

function linesOf(tx: Tx, act: Act): Promise<AuditLine[]> {
  return tx.auditLine.findMany({ where: { at: act.at, actId: act.id }, orderBy: { id: 'asc' }, take: 200 })
}

/** What the act did, in the words of its last line, and how many more there are. */
async function wordsOf(tx: Tx, nowAt: number, lines: readonly AuditLine[]): Promise<string> {
  const line = lines.at(-1)
  if (!line) return say('an unnamed change')
  const facts = await factsOf(tx, [line], nowAt)
  const said = sayLine(line, facts)
  const name = facts.nameOf(line.entityId)
  return name === undefined ? said : `${name}: ${said}`
}

async function laterWords(tx: Tx, nowAt: number, laterId: number): Promise<string> {
  const later = await tx.act.findUniqueOrThrow({ where: { id: laterId } })
  const { zone } = await shopOf(tx)
  return say('Since then: {what} ({who}, {at}). Take that back first.', {
    what: await wordsOf(tx, nowAt, await linesOf(tx, later)),
    who: later.who,
    at: datedWords(later.at, zone, nowAt),
  })
}

/** The line of the history: what was taken back, and of an act that took something back, what stands again. */
function undoneLine(line: AuditLine, act: Act) {
  const detail = line.detail as JsonObject
  const again = line.act === 'undone'
  const of = again || line.act === 'put again' ? detail.of : { act: line.act, detail }
  return {
    act: again ? 'put again' : 'undone',
    entity: line.entity,
    entityId: line.entityId,
    detail: toJson({ of, doneAt: act.at }),
  }
}
