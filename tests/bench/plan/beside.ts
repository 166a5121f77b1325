import type { FloorProblem } from '../../../main/domain/schedule/plan/types.ts'
import { loadHighs } from '../../domain/schedule/highs.ts'
import { floorCases } from '../../domain/schedule/plan/cases.ts'
import { floorByMilp } from '../../domain/schedule/plan/floorMilp.ts'
import type { Figure } from '../run.ts'
import { openChuffed, type Theirs } from './chuffed.ts'
import { figure, layTimed } from './timed.ts'

const goalRatio = 50
const limitS = 20

type Solver = (floor: FloorProblem) => Promise<Theirs>

/** The small cases by two other solvers as well, in the same run: the same objectives, and how much longer they take. */
export async function* besideOthers(): AsyncGenerator<Figure> {
  const chuffed = await openChuffed()
  if (!chuffed) yield figure('Chuffed was not run: no browser was found', 0, 'count')
  else
    try {
      yield* beside('Chuffed', floor => chuffed.solve(floor, limitS))
    } finally {
      await chuffed.close()
    }
  yield* beside('HiGHS', await byHighs())
}

async function byHighs(): Promise<Solver> {
  const highs = await loadHighs()
  return async floor => {
    let seconds = 0
    const watched: Pick<typeof highs, 'solve'> = {
      solve: (...args) => {
        const start = performance.now()
        const result = highs.solve(...args)
        seconds += (performance.now() - start) / 1000
        return result
      },
    }
    const costs = floorByMilp(watched, floor, { mip_rel_gap: 0, mip_abs_gap: 0, time_limit: limitS })
    return { costs, seconds, preparing: 0 }
  }
}

/**
 * All of ours counts, what it takes to build the model too; of theirs only the search. Both solve a case before any
 * counts, then one case after the other, each first in turn.
 */
async function* beside(name: string, solve: Solver): AsyncGenerator<Figure> {
  const ratios: number[] = []
  const wholes: number[] = []
  let total = 0
  let preparing = 0
  let unproven = 0
  const floors = floorCases('small').map(each => each.floor)
  await solve(floors[0]!)
  layTimed(floors[0]!, limitS)
  for (const [i, floor] of floors.entries()) {
    const first = i % 2 === 0 ? await solve(floor) : null
    const { last, seconds } = layTimed(floor, limitS)
    const theirs = first ?? (await solve(floor))
    const ours = Object.values(last.objective!).join('/')
    if (theirs.costs && theirs.costs.join('/') !== ours)
      throw new Error(`${floor.id}: ${name} comes to ${theirs.costs.join('/')}, not ${ours}`)
    if (!theirs.costs) unproven++
    ratios.push(theirs.seconds / seconds)
    wholes.push((theirs.seconds + theirs.preparing) / seconds)
    total += theirs.seconds
    preparing += theirs.preparing
    const came = theirs.costs ? `to the same proof, ${ours}` : 'without a proof'
    yield figure(`${floor.id}, ${name} ${came}`, theirs.seconds, 's')
    yield figure(
      `${floor.id}, ${name} against ours (${seconds.toFixed(3)} s)`,
      theirs.seconds / seconds,
      'ratio',
    )
  }
  yield figure(`${name}, all twelve, ${unproven} of them without a proof`, total, 's')
  if (preparing > 0) yield figure(`${name}, to read and prepare them, not counted`, preparing, 's')
  // A solver stopped without a proof would have taken longer, so the ratios are the least they can be.
  yield medianOf(`${name} against ours, its search alone`, ratios)
  if (preparing > 0) yield medianOf(`${name} against ours, from the problem to the answer`, wholes)
}

function medianOf(what: string, ratios: readonly number[]): Figure {
  const median = ratios.toSorted((a, b) => a - b)[ratios.length >> 1]!
  return figure(`${what}, median`, median, 'ratio', `at least ${goalRatio}`, median >= goalRatio)
}
