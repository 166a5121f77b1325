/** Every promise of the shop as it stands: whoever shows one asks here. */
import { type Judged, judge } from '../../domain/floor/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from './floor.ts'
import { farthestSlipMin, loadFloor } from './loadFloor.ts'

/** The floor with everything that is promised on it, however far ahead; at least to `untilAt`. */
export async function wholeFloor(tx: Tx, nowAt: number, untilAt = nowAt): Promise<Floor> {
  const { _max } = await tx.job.aggregate({
    where: { status: { in: ['booked', 'inShop', 'held'] } },
    _max: { handoverAt: true },
  })
  return loadFloor(tx, nowAt, Math.max(untilAt, (_max.handoverAt ?? nowAt) + farthestSlipMin))
}

const known = new WeakMap<Floor, Judged>()

/** The verdicts on a floor's promises and what is booked over each other; worked out once a floor. */
export function judged(floor: Floor): Judged {
  const before = known.get(floor)
  if (before) return before
  const now = judge(floor)
  known.set(floor, now)
  return now
}
