import { clip, minutesIn } from '../../calendar/spans.ts'
import { openBetween, partOfWork } from '../openTime.ts'
import { minuteAt } from '../prepare.ts'
import { helpOf, skilledFor, teamSize } from '../steps.ts'
import { type Chain, forbidStarts } from './chain.ts'
import type { Rising } from './engine/links.ts'
import type { Solver } from './engine/solver.ts'
import type { Group } from './groups.ts'
import { anyOf, choices, not } from './literals.ts'
import type { Hand } from './places.ts'
import type { FloorProblem } from './types.ts'

/** From when to when people are taken, for each start of the step, in minutes. */
interface Times {
  readonly starts: Rising
  readonly ends: Rising
}

/**
 * The people of one car's steps: one hand for each of a team and for each who comes to its help. In a team the groups
 * stand in order, so that no two of the solver's teams are the same people.
 */
export function addHands(
  solver: Solver,
  floor: FloorProblem,
  groups: readonly Group[],
  chain: Chain,
  car: number,
): Hand[] {
  return chain.steps.flatMap(step => {
    const able = new Set(skilledFor(step.step, floor.crew).map(person => person.id))
    const fits = groups.map(({ ids }) => able.has(ids[0]!))
    const take = (size: number, helps: boolean, times: Times) => {
      const team = Array.from(
        { length: size },
        (): Hand => ({ car, step, helps, start: step, end: step, ...times, from: choices(solver, fits) }),
      )
      for (const [i, hand] of team.entries())
        groups.forEach(({ ids }, g) => {
          const here = hand.from[g]!
          if (!here) return
          forbidStarts(solver, step, here, startsFree(chain, times, ids[0]!))
          const before = team[i - 1]
          if (!before) return
          for (let later = g + 1; later < groups.length; later++)
            anyOf(solver, [not(here), not(before.from[later]!)])
        })
      return team
    }
    const starts = step.starts.map(point => minuteAt(floor, point))
    const team = take(teamSize(step.step), false, { starts, ends: step.ends })
    const help = helpOf(step.step)
    if (help) {
      const parts = [...starts].map(start => partOfWork(chain.prepared.hours, start, help))
      const times = {
        starts: Int32Array.from(parts, ({ from }) => from),
        ends: Int32Array.from(parts, ({ to }) => to),
      }
      team.push(...take(help.crew, true, times))
    }
    for (const [i, hand] of team.entries())
      for (const other of team.slice(0, i)) neverTheSame(solver, groups, hand, other)
    return team
  })
}

/** The same person is not two of a step's people. */
function neverTheSame(solver: Solver, groups: readonly Group[], a: Hand, b: Hand): void {
  groups.forEach(({ ids }, g) => {
    if (ids.length === 1) anyOf(solver, [not(a.from[g]!), not(b.from[g]!)])
  })
}

/** Whether somebody is free in every opening minute of a start's stretch. */
function startsFree(chain: Chain, { starts, ends }: Times, id: string): (start: number) => boolean {
  const { hours, crew } = chain.prepared
  const { free } = crew.find(person => person.id === id)!
  return i => minutesIn(clip(free, starts[i]!, ends[i]!)) === openBetween(hours, starts[i]!, ends[i]!)
}
