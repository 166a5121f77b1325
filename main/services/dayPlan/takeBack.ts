/** The one way back from an accepted proposal, found in the audit: it is there after a restart too. */
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import type { Plan } from '../../domain/schedule/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { jobRows } from '../floor/jobRows.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import { placeTogether } from './place.ts'

interface Place {
  readonly id: string
  /** The version after the cars were moved. */
  readonly version: number
  readonly plan: Plan
}

/** The last proposal accepted: when, how many cars; null where it was taken back or one of its cars changed since. */
export async function lastTakeBack(tx: Tx): Promise<{ at: number; cars: number } | null> {
  const last = await lastLaid(tx)
  if (!last) return null
  const { at, places } = last
  const versions = new Map(places.map(place => [place.id, place.version]))
  const rows = await tx.job.findMany({
    where: { id: { in: [...versions.keys()] } },
    select: { id: true, version: true, status: true },
  })
  const same = rows.every(row => row.status === 'booked' && row.version === versions.get(row.id))
  return same && rows.length === places.length ? { at, cars: places.length } : null
}

/** Puts the cars of the last accepted proposal back where they stood: a new act, refused where that does not fit now. */
export function takeBackRelay(desk: Desk): Promise<{ cars: number }> {
  return act(desk, async (tx, audit, at) => {
    const last = (await lastTakeBack(tx)) && (await lastLaid(tx))
    if (!last)
      refuse('stale', { runId: null }, say('These cars have changed since; move them on the board instead.'))
    const ends = last.places.map(place => place.plan.handover)
    const floor = await loadFloor(tx, at, Math.max(at, ...ends))
    const rows = await jobRows(tx, floor, { id: { in: last.places.map(place => place.id) } })
    await placeTogether(
      tx,
      audit,
      floor,
      rows,
      Object.fromEntries(last.places.map(({ id, plan }) => [id, plan])),
    )
    audit({ act: 're-laying taken back', entity: 'floor', entityId: last.id, detail: { cars: rows.length } })
    return { cars: rows.length }
  })
}

/** The newest line about a laid floor, where it is not one that was taken back. */
async function lastLaid(tx: Tx): Promise<{ id: string; at: number; places: Place[] } | null> {
  const line = await tx.auditLine.findFirst({
    where: { entity: 'floor' },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
  })
  if (line?.act !== 're-laid') return null
  const { places } = fromJson<{ places: Place[] }>(line.detail)
  return { id: line.entityId, at: line.at, places }
}
