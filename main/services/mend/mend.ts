/** Promises that are not kept, each with its ways out, taken one by one or all in one act. */

import { datedWords } from '../../domain/calendar/index.ts'
import { isAmiss } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { saveMove } from '../board/moveSave.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import { type JobRow, jobRows, nameOfCar, plateWords } from '../floor/jobRows.ts'
import { judged, wholeFloor } from '../floor/judged.ts'
import { restOfJob } from '../floor/movePlan.ts'
import { placedJob } from '../floor/placed.ts'
import { otherVisits } from '../floor/vehicleFree.ts'
import { moveCrew } from '../job/people.ts'
import type { MendInput } from './inputs.ts'
import { type WayOut, waysOut } from './ways.ts'

export type AmissView = Awaited<ReturnType<typeof amiss>>

/** More cars than these are listed, but their ways out are worked out only once the first are mended. */
const mostWorkedOut = 12

/** Every promise that is not kept as things stand, soonest first, with its ways out. */
export async function amiss(desk: Desk) {
  const tx = desk.store.read
  const floor = await wholeFloor(tx, desk.now())
  const { of } = judged(floor)
  const ids = floor.jobs.filter(job => isAmiss(of(job))).map(job => job.id)
  const rows = (await jobRows(tx, floor, { id: { in: ids } })).sort((a, b) => a.promisedAt - b.promisedAt)
  const cars = []
  for (const [i, row] of rows.entries()) {
    const { standing, expectedAt, lateMin, lack, lackWords, unfetchedAt } = of(row)
    const ways = i < mostWorkedOut && unfetchedAt === null ? await waysOut(tx, floor, row) : []
    cars.push({
      jobId: row.id,
      version: row.version,
      plate: plateWords(row.vehicle.plate),
      customerName: row.customer.name,
      promisedAt: row.promisedAt,
      ...{ standing, expectedAt, lateMin, lack, lackWords, unfetchedAt },
      ways: ways.map(way => ({
        way: way.way,
        words: wayWords(floor, row, way),
        handoverAt: way.handoverAt,
        kept: way.handoverAt <= row.promisedAt,
      })),
    })
  }
  return { nowAt: floor.nowAt, zone: floor.zone, cars }
}

function wayWords(floor: Floor, row: JobRow, way: WayOut): string {
  const when = (at: number) => datedWords(at, floor.zone, floor.nowAt)
  switch (way.way) {
    case 'person':
      return way.swaps
        .map(({ position, fromId, toId }) =>
          say('{to} for {from}: "{step}"', {
            to: floor.crewNames.get(toId),
            from: floor.crewNames.get(fromId),
            step: row.steps.find(step => step.position === position)?.name,
          }),
        )
        .join('; ')
    case 'push':
      return say('Roll it to {bay} now', { bay: floor.bayNames.get(way.bayId) })
    case 'bay':
      return say('{bay}, same time, {startAt}', {
        bay: floor.bayNames.get(way.bayId),
        startAt: when(way.startAt),
      })
    case 'time':
      return say('{bay}, {startAt}', { bay: floor.bayNames.get(way.bayId), startAt: when(way.startAt) })
  }
}

/**
 * Takes the ways chosen, one car after the other in one act, each worked out anew after those before it. A way that is
 * gone by then is left for another look; where none is left to take, it is refused.
 */
export function mendCars(desk: Desk, { cars }: MendInput): Promise<{ mended: number; left: string[] }> {
  return act(desk, async (tx, audit, nowAt) => {
    const left: string[] = []
    for (const { jobId, version, way } of cars) {
      const floor = await wholeFloor(tx, nowAt)
      const [row] = await jobRows(tx, floor, { id: jobId })
      if (!row || row.version !== version) assertFresh(0, 'job', jobId)
      else {
        // A car mended by what was done for another needs nothing any more.
        if (!isAmiss(judged(floor).of(row))) continue
        const chosen = (await waysOut(tx, floor, row)).find(each => each.way === way)
        if (chosen) await take(tx, audit, { floor, row, way: chosen })
        else left.push(nameOfCar(row.vehicle))
      }
    }
    if (left.length === cars.length)
      refuse('stale', { cars: left }, say('That way is gone by now; look at what there is again.'))
    return { mended: cars.length - left.length, left }
  })
}

interface Taking {
  readonly floor: Floor
  readonly row: JobRow
  readonly way: WayOut
}

async function take(tx: Tx, audit: Audit, { floor, row, way }: Taking): Promise<void> {
  const note = (name: string, detail: Record<string, string | number>) =>
    audit({ act: name, entity: 'job', entityId: row.id, detail })
  if (way.way === 'person') {
    for (const { position, fromId, toId } of way.swaps) {
      const step = row.steps.find(each => each.position === position)!
      const begun = step.actualStartAt !== null
      await moveCrew(tx, step.id, { fromId, toId })
      if (begun)
        await tx.stepPass.create({
          data: { jobId: row.id, position, fromCrewId: fromId, toCrewId: toId, at: floor.nowAt },
        })
      note(begun ? 'passed on' : 'given', {
        step: step.name,
        position,
        from: floor.crewNames.get(fromId) ?? '',
        to: floor.crewNames.get(toId) ?? '',
        ...(begun && { at: floor.nowAt }),
      })
    }
    await touched(tx, row)
    return
  }
  const { bayId, handoverAt } = way
  if (way.way === 'push') {
    const { position } = way
    const step = row.steps.find(each => each.position === position)!
    await tx.jobStep.update({
      where: { id: step.id },
      data: { movedToBayId: bayId, movedAt: floor.nowAt },
    })
    await touched(tx, row)
    note('moved', { position, bayId, startAt: floor.nowAt, handoverAt })
    return
  }
  const rest = restOfJob(floor, row, way.index, await otherVisits(tx, floor, row))
  await saveMove(tx, rest, way.plan, placedJob(rest, way.plan))
  note('moved', { position: row.steps[way.index]!.position, bayId, startAt: way.startAt, handoverAt })
}

/** The job counts one edit more; a form filled before is stale. */
async function touched(tx: Tx, { id, version }: JobRow): Promise<void> {
  const { count } = await tx.job.updateMany({ where: { id, version }, data: { version: { increment: 1 } } })
  assertFresh(count, 'job', id)
}
