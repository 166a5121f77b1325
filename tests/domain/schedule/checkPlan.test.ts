import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkPlan } from '../../../main/domain/schedule/checkPlan.ts'
import { promise } from '../../../main/domain/schedule/promise.ts'
import type { Plan, PlannedStep, Problem } from '../../../main/domain/schedule/types.ts'
import { cases } from '../cases.ts'
import { smallProblem } from './cases.ts'
import { verify } from './verify.ts'

/** A sound plan with one or two things about it changed, which may or may not break it. */
function disturbed(plan: Plan, problem: Problem): fc.Arbitrary<Plan> {
  return fc.gen().map(g => {
    const int = (min: number, max: number) => g(fc.integer, { min, max })
    let handover = plan.handover
    const steps: PlannedStep[] = plan.steps.map(step => ({ ...step }))
    for (let change = int(1, 2); change > 0; change--) {
      const i = int(0, steps.length - 1)
      const step = steps[i]!
      const by = problem.grid * int(-6, 6) + (int(0, 5) === 0 ? int(-2, 2) : 0)
      const bay = problem.bays[int(0, problem.bays.length - 1)]!.id
      const what = int(0, 6)
      if (what === 0) steps[i] = { ...step, start: step.start + by, end: step.end + by }
      else if (what === 1) steps[i] = { ...step, end: step.end + by }
      else if (what === 2) steps[i] = { ...step, bay }
      else if (what === 3) handover += by
      else if (what === 4)
        steps[i] = { ...step, crew: problem.crew.slice(0, int(0, 3)).map(person => person.id) }
      else if (what === 5) steps[i] = { ...step, moved: { at: step.start + Math.abs(by), bay } }
      else
        for (let j = 0; j < steps.length; j++)
          steps[j] = { ...steps[j]!, start: steps[j]!.start + by, end: steps[j]!.end + by }
    }
    return { steps, handover }
  })
}

test('checkPlan objects exactly where the verifier does, on 600 disturbed plans', () => {
  let sound = 0
  let broken = 0
  const plans = smallProblem({ extensions: true }).chain(problem => {
    const { soonest, leastBlocked, askedDay } = promise(problem)
    const found = [soonest, leastBlocked, askedDay].flatMap(offer => (offer.feasible ? [offer.plan] : []))
    const plan =
      found.length > 0 ? fc.constantFrom(...found).chain(one => disturbed(one, problem)) : fc.constant(null)
    return fc.record({ problem: fc.constant(problem), plan })
  })
  fc.assert(
    fc.property(plans, ({ problem, plan }) => {
      fc.pre(plan !== null)
      const objections = verify(problem, plan)
      const violations = checkPlan(problem, plan)
      expect(violations.length > 0, JSON.stringify({ objections, violations })).toBe(objections.length > 0)
      if (violations.length > 0) broken++
      else sound++
    }),
    { numRuns: cases(600) },
  )
  expect(sound).toBeGreaterThan(cases(50))
  expect(broken).toBeGreaterThan(cases(200))
}, 120_000)

describe('checkPlan names the rule, the place and the other side', () => {
  const problem: Problem = {
    grid: 15,
    horizon: 2880,
    open: [
      { from: 480, to: 1080 },
      { from: 1920, to: 2520 },
    ],
    bays: [
      { id: 'A', can: ['wet'], closed: [{ from: 900, to: 960 }] },
      { id: 'B', can: ['clean'], closed: [] },
    ],
    crew: [
      { id: 'p', skills: ['wash'], away: [{ from: 600, to: 660 }] },
      { id: 'q', skills: ['coat'], away: [] },
    ],
    fixed: [{ bay: 'B', from: 1080, to: 1980, job: 'other' }],
    newJob: {
      id: 'new',
      release: 480,
      asked: 480,
      steps: [
        { kind: 'work', minutes: 60, needs: 'wet', skill: 'wash', crew: 1, split: false },
        {
          kind: 'work',
          minutes: 60,
          needs: 'clean',
          skill: 'coat',
          crew: 1,
          split: false,
          waitMin: 30,
          waitMax: 60,
        },
        { kind: 'hold', minutes: 120, needs: 'clean', sameBay: true, waitMax: 0, moveAfter: 60 },
      ],
    },
  }
  const sound: Plan = {
    steps: [
      { bay: 'A', start: 480, end: 540, crew: ['p'] },
      { bay: 'B', start: 570, end: 630, crew: ['q'] },
      { bay: 'B', start: 630, end: 750, crew: [] },
    ],
    handover: 750,
  }
  /** As sound, six and a quarter hours later, when bay A is about to close. */
  const late: Plan = {
    steps: sound.steps.map(step => ({ ...step, start: step.start + 375, end: step.end + 375 })),
    handover: sound.handover + 375,
  }
  const withStep = (i: number, change: Partial<PlannedStep>, handover = sound.handover): Plan => ({
    steps: sound.steps.map((step, j) => (i === j ? { ...step, ...change } : step)),
    handover,
  })
  const cases: [string, Plan, object][] = [
    ['stepCount', { ...sound, steps: sound.steps.slice(1) }, { limit: 2 }],
    ['offGrid', { ...sound, handover: 751 }, { from: 751 }],
    ['beforeRelease', withStep(0, { start: 465, end: 525 }), { limit: 480 }],
    ['beyondHorizon', { ...sound, handover: 2895 }, { limit: 2880 }],
    ['wrongEnd', withStep(2, { end: 735 }), { step: 2, limit: 750 }],
    ['closedHours', withStep(0, { start: 1035, end: 1095 }), { step: 0, minutes: 60 }],
    ['doorsClosed', { ...sound, handover: 1095 }, { from: 1095 }],
    ['waitTooShort', withStep(1, { start: 555, end: 615 }), { step: 1, minutes: 30, from: 540, to: 555 }],
    ['waitTooLong', withStep(1, { start: 615, end: 675 }), { step: 1, minutes: 60, from: 540, to: 615 }],
    ['unknownBay', withStep(0, { bay: 'Z' }), { step: 0, bay: 'Z' }],
    ['unfitBay', withStep(0, { bay: 'B' }), { step: 0, bay: 'B', capability: 'wet' }],
    ['leftBay', withStep(2, { bay: 'A' }), { step: 2, bay: 'B' }],
    ['bayTaken', { ...sound, handover: 1920 }, { bay: 'B', from: 1080, to: 1980, other: 'other' }],
    ['bayClosed', late, { bay: 'A', from: 900, to: 960 }],
    ['movedInHold', withStep(2, { moved: { at: 645, bay: 'A' } }), { step: 2, minutes: 60, to: 645 }],
    ['crewSize', withStep(0, { crew: [] }), { step: 0, minutes: 1, limit: 0, skill: 'wash' }],
    ['unknownPerson', withStep(0, { crew: ['z'] }), { step: 0, person: 'z' }],
    ['unskilled', withStep(0, { crew: ['q'] }), { step: 0, person: 'q', skill: 'wash' }],
    ['personAway', withStep(0, { start: 570, end: 630 }), { step: 0, person: 'p', from: 600, to: 660 }],
    ['personTwice', withStep(0, { crew: ['p', 'p'] }), { step: 0, person: 'p' }],
    ['earlyHandover', { ...sound, handover: 735 }, { from: 735, to: 750 }],
  ]
  test('finds nothing in a sound plan', () => expect(checkPlan(problem, sound)).toEqual([]))
  for (const [code, plan, about] of cases)
    test(code, () => {
      expect(checkPlan(problem, plan)).toContainEqual(expect.objectContaining({ code, ...about }))
    })

  test('outsidePin', () => {
    const steps = problem.newJob.steps.map((step, i) =>
      i === 0 ? { ...step, startFrom: 495, startTo: 600 } : step,
    )
    const pinned = { ...problem, newJob: { ...problem.newJob, steps } }
    expect(checkPlan(pinned, sound)).toEqual([{ code: 'outsidePin', step: 0, from: 495, to: 600 }])
  })
})
