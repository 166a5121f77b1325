import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { explain } from '../../../main/domain/schedule/explain.ts'
import { impossibleSteps } from '../../../main/domain/schedule/impossible.ts'
import { promise } from '../../../main/domain/schedule/promise.ts'
import type { Binding } from '../../../main/domain/schedule/reasons.ts'
import { type Rule, rulesOf, without } from '../../../main/domain/schedule/relax.ts'
import type { Offer, Problem, Step } from '../../../main/domain/schedule/types.ts'
import { everyWay, type Way } from './bruteForce.ts'
import { smallProblem } from './cases.ts'
import { aloneSlowly } from './explainSlowly.ts'
import { promiseCases } from './referenceCases.ts'

const wash: Step = { kind: 'work', minutes: 60, needs: 'wet', skill: 'wash', crew: 1, split: false }
const coat: Step = { kind: 'work', minutes: 120, needs: 'clean', skill: 'coat', crew: 1, split: false }
const cure: Step = { kind: 'hold', minutes: 240, needs: 'clean', sameBay: true, waitMin: 0, waitMax: 0 }

/** Three days, 08:00 to 18:00, one wet bay, one clean one, one person who can do all. */
function shop(steps: readonly Step[], change: Partial<Problem> = {}, asked = 0): Problem {
  return {
    grid: 15,
    horizon: 3 * 1440,
    open: [0, 1, 2].map(day => ({ from: day * 1440 + 480, to: day * 1440 + 1080 })),
    bays: [
      { id: 'A', can: ['wet'], closed: [] },
      { id: 'B', can: ['clean'], closed: [] },
    ],
    crew: [{ id: 'p', skills: ['wash', 'coat'], away: [] }],
    fixed: [],
    newJob: { id: 'new', release: 0, asked, steps },
    ...change,
  }
}

function reasons(problem: Problem, kind: 'soonest' | 'leastBlocked' | 'askedDay'): Binding[] {
  return explain(problem, promise(problem)[kind])
}

describe('what binds an offer', () => {
  test('a bay that is taken, with the booking that takes it', () => {
    const problem = shop([wash], { fixed: [{ bay: 'A', from: 480, to: 840, job: 'other' }] })
    expect(reasons(problem, 'soonest')).toEqual([
      { code: 'bayTaken', bay: 'A', from: 480, to: 840, other: 'other' },
    ])
  })

  test('a closed bay', () => {
    const bays = [{ id: 'A', can: ['wet'], closed: [{ from: 480, to: 900 }] }]
    expect(reasons(shop([wash], { bays }), 'soonest')).toEqual([
      { code: 'bayClosed', bay: 'A', from: 480, to: 900 },
    ])
  })

  test('nobody free who can do it, until when', () => {
    const crew = [{ id: 'p', skills: ['wash'], away: [{ from: 480, to: 700 }] }]
    expect(reasons(shop([wash], { crew }), 'soonest')).toEqual([
      { code: 'crewBusy', step: 0, skill: 'wash', minutes: 1, from: 480, to: 705 },
    ])
  })

  test('a cure that ends at night, and when the shop opens', () => {
    const problem = shop([coat, { ...cure, minutes: 900 }])
    expect(reasons(problem, 'soonest')[0]).toEqual({ code: 'cure', step: 1, from: 1440 + 480 })
    const longer = shop([coat, { ...cure, minutes: 1000 }], {
      open: [
        { from: 480, to: 1080 },
        { from: 2100, to: 2520 },
      ],
    })
    const offer = promise(longer).soonest as Offer
    expect(explain(longer, offer)[0]).toEqual({
      code: 'cure',
      step: 1,
      from: offer.plan.steps[1]!.end,
      to: 2100,
    })
  })

  test('the least wait before the next layer', () => {
    const problem = shop([coat, { ...coat, minutes: 60, sameBay: true, waitMin: 90 }])
    expect(reasons(problem, 'soonest')[0]).toEqual({
      code: 'recoatWait',
      step: 1,
      minutes: 90,
      from: 600,
      to: 690,
    })
  })

  test('closed doors, when the asked day is a closed one', () => {
    const problem = shop([wash], {}, 1100)
    expect(reasons(problem, 'askedDay')[0]).toEqual({ code: 'shopClosed', from: 1080, to: 1440 + 480 })
  })

  test('nothing about the drop-off, when it is the asked one', () => {
    expect(reasons(shop([wash], {}, 480), 'askedDay')).toEqual([{ code: 'workItself', to: 540 }])
  })

  test('nothing but the work itself', () => {
    expect(reasons(shop([wash]), 'leastBlocked')).toEqual([{ code: 'workItself', to: 540 }])
  })
})

describe('why nothing fits', () => {
  const cases: [string, Problem, object][] = [
    ['no bay can', shop([{ ...wash, needs: 'lift' }]), { code: 'noBay', step: 0, capability: 'lift' }],
    [
      'too few people have the skill',
      shop([{ ...wash, crew: 2 } as Step]),
      { code: 'noSkill', step: 0, skill: 'wash', minutes: 2, limit: 1 },
    ],
    [
      'longer than any opening',
      shop([{ ...wash, minutes: 660 }]),
      { code: 'tooLong', step: 0, minutes: 660, limit: 600 },
    ],
    ['the horizon', shop([coat, { ...cure, minutes: 4000 }]), { code: 'horizon', to: 4320 }],
    [
      // Ten hours of work and a night between cannot be within two hours of each other.
      'a longest wait against the hours',
      shop([
        { ...coat, minutes: 600 },
        { ...coat, minutes: 600, sameBay: true, waitMax: 120 },
      ]),
      { code: 'recoatLimit', step: 1, minutes: 120 },
    ],
    [
      'a bay booked throughout',
      shop([wash], { fixed: [{ bay: 'A', from: 0, to: 4320 }] }),
      { code: 'bayTaken', bay: 'A', from: 0, to: 4320 },
    ],
    [
      'people away throughout',
      shop([wash], { crew: [{ id: 'p', skills: ['wash'], away: [{ from: 0, to: 4320 }] }] }),
      { code: 'crewBusy', step: 0, skill: 'wash', minutes: 1, from: expect.any(Number) },
    ],
    ['a pin', shop([{ ...wash, startFrom: 1200, startTo: 1260 }]), { code: 'pinned', step: 0, from: 1200 }],
  ]
  for (const [name, problem, reason] of cases)
    test(name, () => {
      expect(promise(problem).soonest.feasible).toBe(false)
      expect(reasons(problem, 'soonest')).toContainEqual(reason)
      expect(reasons(problem, 'askedDay')).toContainEqual(reason)
    })

  test('two bays booked throughout: both are named, since neither alone is to blame for the chain', () => {
    const fixed = [
      { bay: 'A', from: 0, to: 4320 },
      { bay: 'B', from: 0, to: 4320 },
    ]
    const codes = reasons(shop([wash, coat], { fixed }), 'soonest').map(({ code, bay }) => [code, bay])
    expect(codes).toEqual([
      ['bayTaken', 'A'],
      ['bayTaken', 'B'],
    ])
  })

  test('p11 of the reference cases: the coat would have to cure beyond the horizon', () => {
    const { problem } = promiseCases().find(one => one.problem.id === 'p11')!
    expect(reasons(problem, 'soonest')).toEqual([{ code: 'horizon', to: 1440 }])
  })
})

test('dropping many rules at once and going on from one search names what dropping each by itself names', () => {
  let told = 0
  const problems = smallProblem({ extensions: true })
  fc.assert(
    fc.property(problems, problem => {
      const { soonest, leastBlocked, askedDay } = promise(problem)
      if (!soonest.feasible || !leastBlocked.feasible || !askedDay.feasible) {
        const slow = aloneSlowly(problem, { kind: 'any' }, rule => rule.kind !== 'cure')
        if (!soonest.feasible && slow && impossibleSteps(problem).length === 0) {
          expect(explain(problem, soonest)).toEqual(slow)
          told++
        }
        return
      }
      const all = () => true
      const slowly = [
        [soonest, aloneSlowly(problem, { kind: 'earlierHandover', than: soonest }, all)],
        [leastBlocked, aloneSlowly(problem, { kind: 'earlierAndNoMoreBlocked', than: leastBlocked }, all)],
      ] as const
      for (const [offer, slow] of slowly) {
        if (!slow) continue
        expect(explain(problem, offer)).toEqual(slow)
        told += slow.length
      }
      const arrival = aloneSlowly(problem, { kind: 'earlierDropOff', than: askedDay }, all)
      if (arrival) expect(explain(problem, askedDay).slice(0, arrival.length)).toEqual(arrival)
    }),
    { numRuns: 400 },
  )
  expect(told).toBeGreaterThan(200)
}, 120_000)

/** The rules whose codes and places a reason can come from. */
function ruleOf(problem: Problem, reason: Binding): Rule | undefined {
  return rulesOf(problem).find(rule => {
    if (rule.kind === 'bay') return reason.code.startsWith('bay') && rule.bay === reason.bay
    if (rule.kind === 'skill') return reason.code === 'crewBusy' && rule.skill === reason.skill
    if (rule.kind === 'hours') return reason.code === 'shopClosed'
    if (rule.kind === 'horizon') return reason.code === 'horizon'
    return (rule.kind === 'pin' ? 'pinned' : rule.kind) === reason.code && rule.step === reason.step
  })
}

test('every single reason is true: without its rule, a search of every plan finds a better one', () => {
  let told = 0
  fc.assert(
    fc.property(smallProblem({ extensions: true }), problem => {
      const offer = promise(problem).soonest
      const found = explain(problem, offer)
      const better = (ways: Way[]) => ways.some(way => !offer.feasible || way.handover < offer.handover)
      expect(better(everyWay(problem))).toBe(false)
      if (offer.feasible) expect(found.length).toBeGreaterThan(0)
      const rules = found.map(reason => ruleOf(problem, reason)).filter(rule => rule !== undefined)
      if (rules.length === 0) return
      told++
      const alone = rules.map(rule => better(everyWay(without(problem, rule))))
      if (!alone.includes(false)) return
      // Or it takes all of them together; or no rule is to blame and the job's own pace is told.
      expect(alone).not.toContain(true)
      const all = better(everyWay(rules.reduce(without, problem)))
      if (!all && offer.feasible) {
        expect(found).toHaveLength(1)
        const droppable = rulesOf(problem).filter(rule => rule.kind !== 'horizon')
        expect(better(everyWay(droppable.reduce(without, problem)))).toBe(false)
      } else expect(all).toBe(true)
    }),
    { numRuns: 100 },
  )
  expect(told).toBeGreaterThan(50)
}, 120_000)
