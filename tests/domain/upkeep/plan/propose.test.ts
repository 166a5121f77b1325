import { describe, expect, it } from 'vitest'
import { learnLife } from '../../../../main/domain/upkeep/life/learn.ts'
import { nextDue } from '../../../../main/domain/upkeep/plan/nextDue.ts'
import type { Plan } from '../../../../main/domain/upkeep/plan/plan.ts'
import { acceptProposal, proposeInterval, proposeVisit } from '../../../../main/domain/upkeep/plan/propose.ts'

const sheet = { age: 180, level: 0.9, shape: 2.5, ageSpread: 0.35, shapeSpread: 0.35 }
const question = { today: '2026-06-01', zone: 'America/New_York' }
const plan: Plan = {
  id: 'p',
  kind: 'topper',
  title: 'topper renewal',
  rule: 'FREQ=DAILY;INTERVAL=180',
  anchor: { to: 'last-done', since: '2026-03-01', event: 'the coating' },
  earlyDays: 21,
  lateDays: 7,
}
const kept = { plan, records: [], car: { soldOn: null, away: [] } }

/** Forty lives of which few had ended by 300 days. */
const lasting = learnLife(
  Array.from({ length: 40 }, (_, i) => ({
    inspections: [{ age: 300, working: i % 10 > 0, on: '2026-05-20' }],
  })),
  sheet,
)

describe('a proposed interval', () => {
  it('is none while only the data sheet speaks', () => {
    expect(proposeInterval(kept, learnLife([], sheet), 1, question)).toBeNull()
  })

  it('explains itself with the lives it was read from, and moves nothing by itself', () => {
    const before = nextDue(plan, [], kept.car, question)
    const proposal = proposeInterval(kept, lasting, 1, question)!
    expect(proposal).toMatchObject({ what: 'interval', fromOn: '2026-08-28' })
    expect(proposal.toOn > proposal.fromOn).toBe(true)
    expect(proposal.sentence).toMatch(
      /90 % still work at \d+ days \(between \d+ and \d+ at 95 % confidence\)/,
    )
    expect(proposal.sentence).toContain('Read from 40 lives, 4 seen to end')
    expect(proposal.sentence).toContain('from 28 August 2026 to')
    expect(nextDue(plan, [], kept.car, question)).toEqual(before)

    const accepted = acceptProposal(plan, [], proposal)
    expect(nextDue(accepted.plan, accepted.records, kept.car, question).dueOn).toBe(proposal.toOn)
  })

  it('is scaled to the car, whole days, rounded down', () => {
    const proposal = proposeInterval(kept, lasting, 0.8, question)
    expect(proposal).toMatchObject({ what: 'interval', days: Math.floor(lasting.renewAge * 0.8) })
  })

  it('is refused for a plan that goes by dates', () => {
    const byDates = { ...plan, anchor: { to: 'date', on: '2026-09-01' } as const }
    expect(() => proposeInterval({ ...kept, plan: byDates }, lasting, 1, question)).toThrow(
      expect.objectContaining({ code: 'plan-by-dates' }),
    )
  })

  it('is none for a car that is sold', () => {
    const car = { soldOn: '2026-05-01', away: [] }
    expect(proposeInterval({ ...kept, car }, lasting, 1, question)).toBeNull()
  })
})

describe('a proposed visit', () => {
  const learned = learnLife([], sheet)

  it('is later for a topper seen working late in its life', () => {
    const look = { laidOn: '2026-03-01', on: '2026-08-20', working: true }
    const asked = { ...question, today: '2026-08-20' }
    const proposal = proposeVisit(kept, learned, 1, look, asked)!
    expect(proposal).toMatchObject({ what: 'next-visit', fromOn: '2026-08-28', ruleOn: '2026-08-28' })
    // S(t)/S(172) = 0.9 with shape 2.5 through (180, 0.9): t = (172^2.5 + 180^2.5)^(1/2.5) = 232.5 days.
    expect(proposal.toOn).toBe('2026-10-19')
    const accepted = acceptProposal(plan, [], proposal)
    expect(nextDue(accepted.plan, accepted.records, kept.car, asked).dueOn).toBe('2026-10-19')
  })

  it('is today for one found gone', () => {
    const look = { laidOn: '2026-03-01', on: '2026-05-30', working: false }
    expect(proposeVisit(kept, learned, 1, look, question)).toMatchObject({ toOn: '2026-06-01' })
  })

  it('is none where the day stands well', () => {
    const look = { laidOn: '2026-03-01', on: '2026-03-20', working: true }
    expect(proposeVisit(kept, learned, 1, look, question)).toBeNull()
    const gone = { laidOn: '2026-03-01', on: '2026-09-30', working: false }
    expect(proposeVisit(kept, learned, 1, gone, { ...question, today: '2026-10-01' })).toBeNull()
  })

  it('is refused for a look before the topper was laid, and for another plan', () => {
    const look = { laidOn: '2026-03-01', on: '2026-02-01', working: true }
    expect(() => proposeVisit(kept, learned, 1, look, question)).toThrow(
      expect.objectContaining({ code: 'look-too-early' }),
    )
    const proposal = proposeInterval(kept, lasting, 1, question)!
    expect(() => acceptProposal({ ...plan, id: 'other' }, [], proposal)).toThrow(/another plan/)
  })
})
