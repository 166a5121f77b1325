import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import type { JobView } from '../../../main/services/job/jobView.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { bookJob } from '../bookJob.ts'
import type { TestDesk } from '../makeDesk.ts'
import type { TestShop } from '../testShop.ts'

export const zone = 'America/New_York'

/** The epoch minute of a wall time of April 2026: `15T09:30`. */
export function wall(text: string): number {
  const time = Temporal.PlainDateTime.from(`2026-04-${text}`).toZonedDateTime(zone)
  return time.epochMilliseconds / 60_000
}

export function setWall(desk: TestDesk, text: string): void {
  desk.setNow(Temporal.PlainDateTime.from(`2026-04-${text}`).toZonedDateTime(zone).toInstant().toString())
}

export function job(desk: TestDesk, id: string): Promise<JobView> {
  return getJob(desk, { id })
}

/** Begins a step at its planned time and finishes it at its planned end, or at the times given. */
export async function does(
  desk: TestDesk,
  id: string,
  position: number,
  times: { from?: string; to?: string; reason?: string } = {},
): Promise<JobView> {
  let now = await job(desk, id)
  const step = now.steps.find(each => each.position === position)!
  const iso = (at: number) => Temporal.Instant.fromEpochMilliseconds(at * 60_000).toString()
  if (times.from) setWall(desk, times.from)
  else desk.setNow(iso(step.startAt))
  const reason = times.reason === undefined ? {} : { reason: times.reason }
  await startStep(desk, { id, version: now.version, position, ...reason })
  now = await job(desk, id)
  if (times.to) setWall(desk, times.to)
  else desk.setNow(iso(now.steps.find(each => each.position === position)!.endAt))
  await finishStep(desk, { id, version: now.version, position })
  return job(desk, id)
}

/** A car with one layer and a topper, booked for today and brought in: wash 0, wipe 1, layer 2, hold 3, topper 4. */
export async function toppedCar(desk: TestDesk, shop: TestShop, vehicle = 0): Promise<string> {
  const { id, version } = await bookJob(desk, shop, { treatments: ['topped'], vehicle, kind: 'soonest' })
  await arrive(desk, { id, version })
  return id
}

/** A car with two layers: wash 0, wipe 1, first layer 2, hold 3, second layer 4, hold 5. */
export async function layeredCar(desk: TestDesk, shop: TestShop, vehicle = 0): Promise<string> {
  const { id, version } = await bookJob(desk, shop, { treatments: ['twoLayers'], vehicle, kind: 'soonest' })
  await arrive(desk, { id, version })
  return id
}

/** Has the shop's coating kept dry for a day. */
export async function keepsDryADay(desk: TestDesk): Promise<void> {
  const coating = await desk.store.read.product.findFirstOrThrow({ where: { name: 'Ovrel Two' } })
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.product.update({
      where: { id: coating.id },
      data: { cureProfile: { ...(coating.cureProfile as object), keepDryMin: 1440 } },
    }),
  )
}
