/** The verdict on every promise after a change: on the floor as loaded, and read anew from the database. */
import { judge, projectFloor } from '../../main/domain/floor/index.ts'
import { suppose } from '../../main/domain/relay/index.ts'
import { judged, wholeFloor } from '../../main/services/floor/judged.ts'
import { removeAbsence, saveAbsence } from '../../main/services/setUp/crewAbsences.ts'
import { benchShop, nowAt } from './benchShop.ts'
import { bookStays, peopleCount } from './board/bookedStays.ts'
import { draggedStays, draggingCost } from './board/dragging.ts'
import { waitingMs } from './board/waitingList.ts'
import { frameMs } from './cure/board.ts'
import type { Figure } from './run.ts'

const rounds = 21
const bayCount = 12
const sizes = [500, 5000] as const
const goalMs = 50
const goalGrowth = 12

function medianOf(times: number[]): number {
  return times.sort((a, b) => a - b)[times.length >> 1]!
}

function figure(name: string, value: number, unit: string, goal: string | null, met: boolean | null): Figure {
  return { bench: 'board', case: name, value: Math.round(value * 100) / 100, unit, goal, met }
}

/** Fills a database with booked stays, changes somebody's hours again and again, and times what judging them costs; then drags one. */
export async function* run(): AsyncGenerator<Figure> {
  let before: Cost | undefined
  for (const stays of sizes) {
    const cost = await costOf(stays)
    const name = `${bayCount} bays, ${peopleCount} people, ${stays} stays`
    const asked = stays === 500
    yield figure(`${name}, judged anew`, cost.judging, 'ms', null, null)
    yield figure(
      `${name}, read and judged anew after a change`,
      cost.reading,
      'ms',
      asked ? `at most ${goalMs} ms` : null,
      asked ? cost.reading <= goalMs : null,
    )
    if (before) {
      const growth = cost.reading / before.reading
      const goal = `at most ${goalGrowth}`
      yield figure('500 to 5000 stays, growth', growth, 'ratio', goal, growth <= goalGrowth)
    }
    before = cost
  }
  const waiting = await waitingMs()
  yield figure('100 waiting, 12 bays, 500 stays', waiting, 'ms', 'under 500 ms', waiting < 500)
  yield* dragging()
}

/** A stay carried over the week of a full board in a browser; nothing where there is none to be had. */
async function* dragging(): AsyncGenerator<Figure> {
  const cost = await draggingCost()
  const name = `a stay dragged over ${draggedStays} stays`
  if (!cost) {
    yield figure(`${name} was not looked at: no browser was found`, 0, 'count', null, null)
    return
  }
  const { longestMs, framesPerS } = cost
  const goal = `at most ${frameMs.toFixed(1)} ms`
  yield figure(`${name}, longest task, computing`, longestMs, 'ms', goal, longestMs <= frameMs)
  // A machine that does other things too is late with frames that cost it little.
  yield figure(`${name}, frames`, framesPerS, 'a second', '60', framesPerS >= 59)
}

interface Cost {
  readonly judging: number
  readonly reading: number
}

async function costOf(stays: number): Promise<Cost> {
  const { store, desk, close } = await benchShop({ bays: bayCount, people: peopleCount, starters: false })
  try {
    await bookStays(desk, stays)
    const people = await store.read.crewMember.findMany()
    const judging: number[] = []
    const reading: number[] = []
    for (let round = 0; round < rounds; round++) {
      const crewId = people[round % people.length]!.id
      const away = { crewId, fromAt: nowAt, toAt: nowAt + 2880, reason: 'ill' }
      const { id } = await saveAbsence(desk, { ...away, accepted: true })
      const start = performance.now()
      const floor = await wholeFloor(store.read, nowAt)
      const { of } = judged(floor)
      const amiss = floor.jobs.filter(job => of(job).standing !== 'kept').length
      reading.push(performance.now() - start)
      if (floor.jobs.length < stays || amiss === 0) throw new Error('nothing was to judge')
      const again = performance.now()
      const other = judge(projectFloor(suppose(floor, [{ kind: 'away', ...away, crewId: people[0]!.id }])))
      for (const job of floor.jobs) other.of(job)
      judging.push(performance.now() - again)
      await removeAbsence(desk, { id, version: 1 })
    }
    return { judging: medianOf(judging), reading: medianOf(reading) }
  } finally {
    await close()
  }
}
