import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { learnLife } from '../../../../main/domain/upkeep/life/learn.ts'
import { survival } from '../../../../main/domain/upkeep/life/weibull.ts'
import { nextDue } from '../../../../main/domain/upkeep/plan/nextDue.ts'
import type { Plan } from '../../../../main/domain/upkeep/plan/plan.ts'
import {
  acceptProposal,
  missingWords,
  proposeInterval,
  proposeVisit,
} from '../../../../main/domain/upkeep/plan/propose.ts'

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
      /^Renew every \d+ days instead of 180: next on \d+ \w+ 2026, not 28 August 2026\.$/,
    )
    const why = proposal.why.join(' ')
    expect(why).toMatch(/90 % still work at \d+ days \(between \d+ and \d+ at 95 % confidence\)/)
    expect(why).toContain('Read from 40 lives, 4 seen to end')
    expect(why).toContain('only as far as nine chances in ten keep that share')
    expect(nextDue(plan, [], kept.car, question)).toEqual(before)

    const accepted = acceptProposal(plan, [], proposal)
    expect(nextDue(accepted.plan, accepted.records, kept.car, question).dueOn).toBe(proposal.toOn)
  })

  it('is scaled to the car, whole days, rounded down', () => {
    const proposal = proposeInterval(kept, lasting, 1.25, question)
    expect(proposal).toMatchObject({ what: 'interval', days: Math.floor(lasting.cautiousAge * 1.25) })
  })

  it('is no longer one by two survivors and a data sheet, and says what is missing', () => {
    const two = learnLife(
      [300, 310].map(age => ({ inspections: [{ age, working: true, on: '2026-05-20' }] })),
      sheet,
    )
    expect(two.renewAge).toBeGreaterThan(200)
    expect(proposeInterval(kept, two, 1, question)).toBeNull()
    expect(missingWords(kept, two, 1, question.zone)).toMatch(
      /^2 lives seen so far, none of them to its end: too few to renew later than after 180 days\./,
    )
    expect(missingWords(kept, lasting, 1, question.zone)).toBeNull()
    expect(missingWords(kept, learnLife([], sheet), 1, question.zone)).toBeNull()
  })

  it('is longer only where the cautious end keeps the asked-for share, shorter as soon as the middle says so', () => {
    const lives = fc.array(
      fc.record({ age: fc.integer({ min: 20, max: 500 }), working: fc.boolean() }).map(look => ({
        inspections: [{ ...look, on: '2026-05-20' }],
      })),
      { minLength: 1, maxLength: 30 },
    )
    const seen = { longer: 0, shorter: 0, missing: 0 }
    fc.assert(
      fc.property(lives, fc.integer({ min: 60, max: 300 }), (looked, days) => {
        const learned = learnLife(looked, sheet)
        const of = { ...kept, plan: { ...plan, rule: `FREQ=DAILY;INTERVAL=${days}` } }
        const proposal = proposeInterval(of, learned, 1, question)
        const proposed = proposal?.what === 'interval' ? proposal.days : days
        const cautious = {
          ...learned.life,
          scale: (learned.life.scale * learned.cautiousAge) / learned.renewAge,
        }
        if (proposed > days) {
          seen.longer++
          expect(survival(cautious, proposed)).toBeGreaterThanOrEqual(0.9 - 1e-9)
        }
        if (proposed < days) seen.shorter++
        const middle = Math.floor(learned.renewAge)
        if (days - middle >= Math.max(7, 0.05 * days)) expect(proposed).toBe(Math.max(1, middle))
        const missing = missingWords(of, learned, 1, question.zone)
        if (missing) seen.missing++
        expect(missing !== null).toBe(proposal === null && middle - days >= Math.max(7, 0.05 * days))
      }),
      { numRuns: 60 },
    )
    for (const times of Object.values(seen)) expect(times).toBeGreaterThan(3)
  })

  it('names no day already past: what would have been due by then is due today, and stays so when accepted', () => {
    const soon = learnLife(
      Array.from({ length: 30 }, (_, i) => ({
        inspections: [{ age: 100, working: i % 10 > 1, on: '2026-05-20' }],
      })),
      sheet,
    )
    const asked = { ...question, today: '2026-08-20' }
    const proposal = proposeInterval(kept, soon, 1, asked)!
    expect(proposal).toMatchObject({ what: 'interval', fromOn: '2026-08-28', toOn: '2026-08-20' })
    expect(proposal.sentence).toMatch(
      /^Renew every \d+ days instead of 180: due now, not on 28 August 2026\.$/,
    )
    const accepted = acceptProposal(plan, [], proposal)
    expect(nextDue(accepted.plan, accepted.records, kept.car, asked).dueOn).toBe('2026-08-20')
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
    // The sheet's age is 180 days, spread by 0.35 in its logarithm, so its one-sided 90 % end is 180 e^(-1.2816 × 0.35) =
    // 114.9 days. S(t)/S(172) = 0.9 with shape 2.5 through (114.9, 0.9): t = (172^2.5 + 114.9^2.5)^(1/2.5) = 194.8 days.
    expect(proposal.toOn).toBe('2026-09-11')
    const accepted = acceptProposal(plan, [], proposal)
    expect(nextDue(accepted.plan, accepted.records, kept.car, asked).dueOn).toBe('2026-09-11')
  })

  it('is today for one found gone', () => {
    const look = { laidOn: '2026-03-01', on: '2026-05-30', working: false }
    expect(proposeVisit(kept, learned, 1, look, question)).toMatchObject({ toOn: '2026-06-01' })
  })

  it('is never on a day already past, nor later than the cautious end of what was learned', () => {
    const lives = fc.array(
      fc.record({ age: fc.integer({ min: 20, max: 500 }), working: fc.boolean() }).map(look => ({
        inspections: [{ ...look, on: '2026-05-20' }],
      })),
      { maxLength: 20 },
    )
    const day = (on: string) => Temporal.PlainDate.from(on)
    const seen = { today: 0, later: 0 }
    fc.assert(
      fc.property(
        lives,
        fc.integer({ min: 60, max: 200 }),
        fc.integer({ min: 0, max: 90 }),
        (looked, age, passed) => {
          const learned = learnLife(looked, sheet)
          const on = day('2026-03-01').add({ days: age })
          const today = on.add({ days: passed }).toString()
          const look = { laidOn: '2026-03-01', on: on.toString(), working: true }
          const proposal = proposeVisit(kept, learned, 1, look, { ...question, today })
          if (!proposal) return
          const { fromOn, toOn, sentence, why } = proposal
          expect(toOn >= today).toBe(true)
          expect(why.length).toBeGreaterThan(0)
          if (toOn === today) {
            seen.today++
            expect(sentence).toContain(fromOn > today ? 'renew it now' : '')
          }
          if (toOn <= fromOn) return
          seen.later++
          // Given that it worked then, the cautious curve keeps the asked-for share until the day proposed.
          const { life, renewAge, cautiousAge } = learned
          const cautious = { ...life, scale: (life.scale * cautiousAge) / renewAge }
          const until = day('2026-03-01').until(day(toOn), { largestUnit: 'days' }).days
          if (toOn !== today)
            expect(survival(cautious, until) / survival(cautious, age)).toBeGreaterThanOrEqual(0.9 - 1e-9)
        },
      ),
      { numRuns: 400 },
    )
    for (const times of Object.values(seen)) expect(times).toBeGreaterThan(3)
  })

  it('is none where the day stands well', () => {
    const look = { laidOn: '2026-03-01', on: '2026-03-20', working: true }
    expect(proposeVisit(kept, learned, 1, look, question)).toBeNull()
    // Due since 28 August, and by what was learned over as well: it is not put off to today.
    const late = { ...question, today: '2027-03-01' }
    expect(proposeVisit(kept, learned, 1, { ...look, on: '2026-08-20' }, late)).toBeNull()
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
