import { describe, expect, test } from 'vitest'
import { checkPlan } from '../../../main/domain/schedule/checkPlan.ts'
import { explain } from '../../../main/domain/schedule/explain.ts'
import { project } from '../../../main/domain/schedule/project.ts'
import { promise } from '../../../main/domain/schedule/promise.ts'
import { readCase } from '../../../main/domain/schedule/readCase.ts'
import type { Offer, Plan, Problem } from '../../../main/domain/schedule/types.ts'
import { bestWay, everyWay } from './bruteForce.ts'
import { at, example } from './example.ts'
import { verify } from './verify.ts'

/** A polish of four hours by one, who wants a second pair of hands for an hour, two hours into it. */
function polish(away: readonly [number, number][], split = false): Problem {
  return {
    ...example,
    crew: [
      { id: 'Jo', skills: ['polish'], away: [] },
      { id: 'Kim', skills: ['polish'], away: away.map(([from, to]) => ({ from, to })) },
      { id: 'Lu', skills: ['wash'], away: [] },
    ],
    fixed: [],
    newJob: {
      ...example.newJob,
      steps: [
        {
          kind: 'work',
          minutes: 240,
          skill: 'polish',
          crew: 1,
          split,
          help: { crew: 1, from: 120, minutes: 60 },
        },
      ],
    },
  }
}

/** The soonest offer, which every plan there is was tried against. */
function soonest(problem: Problem): Offer {
  const best = bestWay(everyWay(problem), way => [way.handover, way.blockedOpen, way.moves, -way.dropOff])
  const offer = promise(problem).soonest
  if (!offer.feasible) throw new Error('no offer')
  expect(offer.handover).toBe(best?.handover)
  expect(verify(problem, offer.plan)).toEqual([])
  return offer
}

describe('help inside a step', () => {
  test('takes the helper for that hour alone', () => {
    const { plan } = soonest(
      polish([
        [at(8), at(10)],
        [at(11), at(18)],
      ]),
    )
    expect(plan.steps).toEqual([{ bay: 'wash', start: at(8), end: at(12), crew: ['Jo'], help: ['Kim'] }])
  })

  test('moves the step to where the helper has the hour', () => {
    const { plan } = soonest(polish([[at(8), at(13)]]))
    expect(plan.steps[0]).toMatchObject({ start: at(11), end: at(15), crew: ['Jo'], help: ['Kim'] })
  })

  test('is given by whoever is not at the step already: where Kim polishes, Jo helps', () => {
    const problem = polish([])
    const { plan } = soonest({
      ...problem,
      crew: problem.crew.map(each =>
        each.id === 'Jo'
          ? {
              ...each,
              away: [
                { from: at(8), to: at(9) },
                { from: at(11), to: at(18) },
              ],
            }
          : each,
      ),
    })
    expect(plan.steps[0]).toMatchObject({ start: at(8), crew: ['Kim'], help: ['Jo'] })
  })

  test('is counted in worked minutes where the step pauses at closing', () => {
    // From 17:00 on, the third hour is worked from 09:00 to 10:00 of the second day.
    const problem = polish(
      [
        [at(8), at(33)],
        [at(34), at(42)],
      ],
      true,
    )
    expect(soonest(problem).plan.steps[0]).toMatchObject({ start: at(17), end: at(35), help: ['Kim'] })
  })

  test('that nobody can give is no offer, and says who lacks', () => {
    const problem = polish([[at(8), at(42)]])
    expect(everyWay(problem)).toEqual([])
    const offers = promise(problem)
    expect(offers.soonest.feasible).toBe(false)
    expect(explain(problem, offers.soonest)).toMatchObject([
      { code: 'crewBusy', skill: 'polish', minutes: 2 },
    ])
    const alone = { ...problem, crew: problem.crew.filter(each => each.id !== 'Kim') }
    expect(explain(alone, promise(alone).soonest)).toMatchObject([{ code: 'noSkill', minutes: 2, limit: 1 }])
  })

  test('is checked in any plan: nobody, the same one, somebody away, somebody unskilled', () => {
    const problem = polish([[at(10), at(10, 30)]])
    const codes = (help?: string[]) => {
      const step = { bay: 'wash', start: at(8), end: at(12), crew: ['Jo'], ...(help && { help }) }
      const plan: Plan = { steps: [step], handover: at(12) }
      expect(verify(problem, plan)).not.toEqual([])
      return checkPlan(problem, plan).map(({ code }) => code)
    }
    expect(codes()).toEqual(['crewSize'])
    expect(codes(['Jo'])).toEqual(['personTwice'])
    expect(codes(['Kim'])).toEqual(['personAway'])
    expect(codes(['Lu'])).toEqual(['unskilled'])
  })

  test('that is not there any more pushes the projection to where it is', () => {
    const problem = polish([[at(10, 30), at(13)]])
    const step = { bay: 'wash', start: at(8), end: at(12), crew: ['Jo'], help: ['Kim'] }
    const plan: Plan = { steps: [step], handover: at(12) }
    const { steps } = project(problem, plan, { actuals: [], now: at(8) })
    expect(steps[0]).toMatchObject({ start: at(11), end: at(15), help: ['Kim'] })
  })

  test('is read with its usual values, and refused where it outlasts the step', () => {
    const given = (help: object) => ({
      ...polish([]),
      open: [[at(8), at(18)]],
      crew: [],
      newJob: { id: 'new', steps: [{ kind: 'work', minutes: 60, skill: 'polish', help }] },
    })
    expect(readCase(given({ minutes: 60 })).newJob.steps[0]).toMatchObject({
      help: { crew: 1, from: 0, minutes: 60 },
    })
    expect(() => readCase(given({ minutes: 61 }))).toThrow(
      expect.objectContaining({ field: 'newJob.steps.0.help.minutes' }),
    )
    expect(() => readCase(given({ from: 10, minutes: 60 }))).toThrow(
      expect.objectContaining({ field: 'newJob.steps.0.help.from' }),
    )
  })
})
