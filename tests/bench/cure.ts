/** The cure clock over long logs: how soon a milestone is projected, and what the board's next frame costs. */
import { type CureClock, cureClock } from '../../main/domain/cure/clock.ts'
import {
  type CureProfile,
  clockMilestones,
  commonPracticeProfile,
  cureCurve,
  laidCoat,
  type Reading,
} from '../../main/domain/cure/index.ts'
import { boardCost, frameMs } from './cure/board.ts'
import { heldCars } from './cure/heldShop.ts'
import type { Figure } from './run.ts'

const rounds = 15
const usualC = 17

/** A bay's log: `count` readings a minute apart, between 10 and 24 °C with the days and a little noise. */
function log(count: number): Reading[] {
  let noise = 1
  return Array.from({ length: count }, (_, at) => {
    noise = (noise * 48_271) % 2_147_483_647
    return { at, celsius: 17 + 6 * Math.sin(at / 229) + (noise / 2_147_483_647 - 0.5) * 2 }
  })
}

const profiles: [string, CureProfile][] = [
  ['Arrhenius', { ...commonPracticeProfile(), rate: { rule: 'arrhenius', activationOverRK: 5000 } }],
  ['doubling', commonPracticeProfile()],
]

/** A cold bay's profile, so that the last milestone lies beyond the log and all of it must be summed. */
function slow(profile: CureProfile, count: number): CureProfile {
  const lateMin = Math.max(profile.fullCure.lateMin, Math.min(count, 365 * 1440))
  return { ...profile, fullCure: { ...profile.fullCure, lateMin } }
}

interface Timing {
  first: number
  median: number
}

function timed(work: () => number): Timing {
  const times: number[] = []
  let used = 0
  for (let round = 0; round < rounds; round++) {
    const start = performance.now()
    used += work()
    times.push(performance.now() - start)
  }
  // The result is used, so that no round is optimised away.
  if (!Number.isFinite(used)) throw new Error('a milestone was never reached')
  const first = times[0]!
  return { first, median: times.sort((a, b) => a - b)[rounds >> 1]! }
}

function project(profile: CureProfile, readings: readonly Reading[]): number {
  const laying = { fromAt: 0, toAt: 0 }
  const coat = laidCoat(profile, laying, { readings, usualC, usualFrom: 'set', nowAt: readings.length })
  return clockMilestones(coat).fullCureLate!.at
}

const figure = (
  name: string,
  value: number,
  unit: string,
  goal: string | null,
  met: boolean | null,
): Figure => ({
  bench: 'cure',
  case: name,
  value: Math.round(value * 1000) / 1000,
  unit,
  goal,
  met,
})

/** Yields one figure after another; nothing is read or written. */
export async function* run(): AsyncGenerator<Figure> {
  const short = log(10_000)
  const long = log(100_000)
  for (const [rule, profile] of profiles) {
    const few = timed(() => project(slow(profile, short.length), short))
    const many = timed(() => project(slow(profile, long.length), long))
    const name = `milestones from 100,000 readings, ${rule}`
    yield figure(`${name}, first time`, many.first, 'ms', 'under 50', many.first < 50)
    yield figure(`${name}, median`, many.median, 'ms', 'under 50', many.median < 50)
    yield figure(`${name}, against 10,000`, many.median / few.median, 'ratio', null, null)
  }

  // What the board asks for each frame: where 12 cars stand now, and the next points of their curves.
  const cars: [CureClock, ReturnType<typeof cureCurve>][] = Array.from({ length: 12 }, (_, i) => {
    const [, profile] = profiles[i % 2]!
    const temperatures = { readings: long, usualC, nowAt: long.length }
    return [cureClock(profile, long.length - 600 - 100 * i, temperatures), cureCurve(profile)]
  })
  const frame = timed(() => {
    let sum = 0
    for (const [clock, curve] of cars)
      for (let at = clock.coatEndAt; at <= long.length + 1000; at += 15)
        sum += curve.degreeAt(clock.ageAt(at)).likely
    return sum
  })
  yield figure(
    '12 held cars, their curves anew',
    frame.median,
    'ms',
    'a quarter of a 16.7 ms frame',
    frame.median < 4.2,
  )
  yield* onScreen()
}

/** The same twelve cars on the board in a browser; nothing where there is no browser to be had. */
async function* onScreen(): AsyncGenerator<Figure> {
  const cost = await boardCost()
  if (!cost) return
  const middle = (values: number[]) => [...values].sort((a, b) => a - b)[values.length >> 1]!
  const worst = Math.max(...cost.longest)
  const name = `board with ${heldCars} held cars refreshed`
  yield figure(
    `${name}, longest task of the window, worst`,
    worst,
    'ms',
    'under a 16.7 ms frame',
    worst < frameMs,
  )
  yield figure(`${name}, longest task of the window, median`, middle(cost.longest), 'ms', null, null)
  yield figure(`${name}, answer, median`, middle(cost.answers), 'ms', null, null)
}
