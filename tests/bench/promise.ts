/** The promise while the caller is on the phone: its time in booked shops, its growth, and HiGHS beside it. */
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { explain, type OfferKind, type Problem, promise, readCase } from '../../main/domain/schedule/index.ts'
import { type Highs, loadHighs } from '../domain/schedule/highs.ts'
import { offerByMilp } from '../domain/schedule/milp.ts'
import { bookedShop } from './bookedShop.ts'
import { inTurn, whole } from './inTurn.ts'
import type { Figure } from './run.ts'

const rounds = 31
const besideRounds = 5
const sizes = [50, 500, 5000] as const
const kinds: readonly OfferKind[] = ['soonest', 'leastBlocked', 'askedDay']
const goalMs = 20
const goalGrowth = 12
const goalRatio = 100

/** The middle of the times, in ms; the result is used, so that no round is optimised away. */
function median(work: () => number): number {
  let used = 0
  for (let round = 0; round < 5; round++) used += work()
  const times: number[] = []
  for (let round = 0; round < rounds; round++) {
    const start = performance.now()
    used += work()
    times.push(performance.now() - start)
  }
  if (!Number.isFinite(used)) throw new Error('an offer has no handover')
  return times.sort((a, b) => a - b)[rounds >> 1]!
}

/** All three offers; a number made of them. */
function answer(problem: Problem): number {
  const offers = promise(problem)
  let sum = 0
  for (const kind of kinds) {
    const offer = offers[kind]
    if (!offer.feasible) throw new Error(`the booked shop has no ${kind} offer to find`)
    sum += offer.handover
  }
  return sum
}

function figure(name: string, value: number, unit: string, goal: string | null, met: boolean | null): Figure {
  return { bench: 'promise', case: name, value: Math.round(value * 1000) / 1000, unit, goal, met }
}

/** Yields one figure after another; reads one reference case and writes nothing. */
export async function* run(): AsyncGenerator<Figure> {
  for (const bays of [4, 12]) {
    let before: number | undefined
    for (const stays of sizes) {
      const problem = bookedShop(bays, stays)
      const time = median(() => answer(problem))
      const name = `${bays} bays, ${stays} stays, three offers`
      const asked = bays === 12 && stays === 500
      yield figure(name, time, 'ms', asked ? `at most ${goalMs} ms` : null, asked ? time <= goalMs : null)
      if (before !== undefined)
        yield figure(
          `${bays} bays, ${stays / 10} to ${stays} stays, growth`,
          time / before,
          'ratio',
          `at most ${goalGrowth}`,
          time / before <= goalGrowth,
        )
      before = time
    }
  }
  const problem = bookedShop(12, 500)
  const offers = promise(problem)
  const reasons = median(() => kinds.reduce((sum, kind) => sum + explain(problem, offers[kind]).length, 0))
  yield figure('12 bays, 500 stays, reasons of three offers', reasons, 'ms', null, null)
  yield* besideHighs(await loadHighs())
}

/**
 * The first two days of a reference case, small enough for a time-indexed program; only HiGHS's solving counts. Both are
 * run in turn.
 */
async function* besideHighs(highs: Highs): AsyncGenerator<Figure> {
  const path = fileURLToPath(new URL('../reference/scheduling/promise.json', import.meta.url))
  const { cases } = JSON.parse(readFileSync(path, 'utf8')) as { cases: { id: string }[] }
  const problem = readCase({ ...cases.find(one => one.id === 'p03'), horizon: 2520 })
  let solving = 0
  const timed = {
    solve: (...args: Parameters<Highs['solve']>) => {
      const start = performance.now()
      const result = highs.solve(...args)
      solving += performance.now() - start
      return result
    },
  }
  const offers = promise(problem)
  const theirs = () => {
    solving = 0
    for (const kind of kinds) {
      const offer = offerByMilp(timed, problem, kind, { mip_rel_gap: 0, mip_abs_gap: 0 })
      const ours = offers[kind]
      if (
        !ours.feasible ||
        !offer ||
        Object.entries(offer).some(([name, value]) => ours[name as 'moves'] !== value)
      )
        throw new Error(`HiGHS has another ${kind} offer: ${JSON.stringify(offer)}`)
    }
    return solving
  }
  const ms = await inTurn({ theirs, ours: whole(() => answer(problem)) }, { rounds: besideRounds })
  yield figure('4 bays, two days, three offers, ours', ms.ours, 'ms', null, null)
  yield figure('4 bays, two days, three offers, HiGHS', ms.theirs, 'ms', null, null)
  const ratio = ms.theirs / ms.ours
  yield figure('HiGHS against ours, same answer', ratio, 'ratio', `at least ${goalRatio}`, ratio >= goalRatio)
}
