import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { acceptedPlan, changesOf, together } from '../../domain/relay/index.ts'
import type { JsonObject } from '../../store/json.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import { type JobRow, jobRows } from '../floor/jobRows.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import type { AcceptInput } from './inputs.ts'
import { placeOf, placeTogether } from './place.ts'
import { relayRuns } from './relay.ts'
import type { Run } from './runs.ts'

/** Accepts a proposal for some of its cars, and for those whose places they need: all of them move, or none. */
export async function acceptRelay(desk: Desk, { runId, jobIds }: AcceptInput): Promise<{ cars: number }> {
  const { run } = relayRuns.stands(desk.store)
  if (run?.id !== runId)
    refuse(
      'stale',
      { runId },
      say('This proposal is not there any more: another was begun. Lay the floor again.'),
    )
  await relayRuns.stop(desk.store)
  const cars = await act(desk, (tx, audit, at) => acceptCars(tx, audit, at, { run, jobIds }))
  await relayRuns.drop(desk.store)
  return { cars }
}

interface Accepted<Asked> {
  readonly run: Run<Asked>
  readonly jobIds: readonly string[]
}

/** Moves the chosen cars of a run and says how many; the audit keeps where they stood, for one way back. */
export async function acceptCars<Asked>(
  tx: Tx,
  audit: Audit,
  at: number,
  { run, jobIds }: Accepted<Asked>,
): Promise<number> {
  const plan = run.laying?.plan ?? {}
  const changes = changesOf(run.task, plan)
  const chosen = together(changes, jobIds)
  const unknown = jobIds.find(id => !chosen.has(id))
  if (unknown !== undefined)
    refuse('missing', { jobIds: unknown }, say('The proposal leaves this car where it is; look at it again.'))
  const ends = [...chosen].map(id => plan[id]!.handover)
  const floor = await loadFloor(tx, at, Math.max(at, ...ends))
  const rows = await jobRows(tx, floor, { id: { in: [...chosen] } })
  assertSame(run, rows, chosen)
  await placeTogether(tx, audit, floor, rows, acceptedPlan(run.task, plan, chosen))
  audit({
    act: 're-laid',
    entity: 'floor',
    entityId: run.id,
    detail: { cars: rows.length, places: rows.map(placeOf) as unknown as JsonObject[] },
  })
  return rows.length
}

/** @throws Refusal where one of the cars is not as the proposal found it. */
function assertSame<Asked>(run: Run<Asked>, rows: readonly JobRow[], chosen: ReadonlySet<string>): void {
  for (const id of chosen) {
    const seen = run.cars.find(car => car.jobId === id)
    if (rows.find(row => row.id === id)?.version !== seen?.version) assertFresh(0, 'job', id)
  }
}
