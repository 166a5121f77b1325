import { describe, expect, test } from 'vitest'
import type { Span } from '../../../main/domain/calendar/spans.ts'
import { promise } from '../../../main/domain/schedule/promise.ts'
import type { Problem } from '../../../main/domain/schedule/types.ts'
import { verify } from './verify.ts'

/** One bay, one person, a coat that ends when asked, and its hold; open 08:00 to 18:00. */
function coated(open: Span[], coatEnds: number, holdMin: number): Problem {
  return {
    grid: 15,
    horizon: open.at(-1)!.to,
    open,
    bays: [{ id: 'bay', can: ['clean'], closed: [] }],
    crew: [{ id: 'person', skills: ['coat'], away: [] }],
    fixed: [],
    newJob: {
      id: 'new',
      release: open[0]!.from,
      asked: open[0]!.from,
      steps: [
        {
          kind: 'work',
          minutes: 60,
          needs: 'clean',
          skill: 'coat',
          crew: 1,
          split: false,
          startFrom: coatEnds - 60,
          startTo: coatEnds - 60,
        },
        { kind: 'hold', minutes: holdMin, needs: 'clean', sameBay: true, waitMin: 0, waitMax: 0 },
      ],
    },
  }
}

function soonest(problem: Problem) {
  const { soonest: offer } = promise(problem)
  if (!offer.feasible) throw new Error('nothing fits')
  return offer
}

describe('an overnight cure', () => {
  const open = [0, 1, 2].map(day => ({ from: day * 1440 + 480, to: day * 1440 + 1080 }))

  test('of a coat finished at 17:30 blocks 30 open minutes, not 12 hours', () => {
    const offer = soonest(coated(open, 17 * 60 + 30, 720))
    expect(offer.blockedOpen).toBe(30)
    expect(offer.handover).toBe(1440 + 480)
    expect(offer.closedCure).toBe(690)
  })

  test('begun at 09:00 blocks the nine hours to closing', () => {
    const offer = soonest(coated(open, 9 * 60, 720))
    expect(offer.blockedOpen).toBe(9 * 60)
    expect(offer.handover).toBe(1440 + 480)
    expect(offer.closedCure).toBe(180)
  })
})

/** Minutes since 1970 of a wall time, by the platform's own zone data. */
function minuteAt(date: string, time: string, zone: string): number {
  return Temporal.ZonedDateTime.from(`${date}T${time}[${zone}]`).epochMilliseconds / 60_000
}

// Clock changes from the IANA time zone database as the runtime carries it: the evenings before them.
const nights: [string, string, string, number][] = [
  ['America/New_York', '2026-03-07', '2026-03-08', 840 - 60],
  ['America/New_York', '2026-10-31', '2026-11-01', 840 + 60],
  ['America/New_York', '2027-03-13', '2027-03-14', 840 - 60],
  ['America/New_York', '2027-11-06', '2027-11-07', 840 + 60],
  ['Europe/Berlin', '2026-03-28', '2026-03-29', 840 - 60],
  ['Europe/Berlin', '2026-10-24', '2026-10-25', 840 + 60],
  ['Europe/Berlin', '2027-03-27', '2027-03-28', 840 - 60],
  ['Europe/Berlin', '2027-10-30', '2027-10-31', 840 + 60],
]

describe('a hold over a clock change', () => {
  for (const [zone, evening, morning, nightMin] of nights)
    test(`${zone}, ${morning}, lasts its elapsed time`, () => {
      const open = [evening, morning].map(date => ({
        from: minuteAt(date, '08:00', zone),
        to: minuteAt(date, '18:00', zone),
      }))
      expect(open[1]!.from - open[0]!.to).toBe(nightMin)
      // Finished at 17:30; the hold ends exactly half an hour after opening, whatever the night's length.
      const holdMin = 30 + nightMin + 30
      const problem = coated(open, minuteAt(evening, '17:30', zone), holdMin)
      const offer = soonest(problem)
      const hold = offer.plan.steps[1]!
      expect(hold.end - hold.start).toBe(holdMin)
      expect(offer.handover).toBe(minuteAt(morning, '08:30', zone))
      expect(offer.blockedOpen).toBe(60)
      expect(offer.closedCure).toBe(nightMin)
    })
})

test('a split step goes on over a clock-change night without losing a minute', () => {
  const zone = 'Europe/Berlin'
  const open = ['2026-10-24', '2026-10-25'].map(date => ({
    from: minuteAt(date, '08:00', zone),
    to: minuteAt(date, '18:00', zone),
  }))
  const problem = coated(open, minuteAt('2026-10-24', '17:30', zone), 15)
  const work = {
    ...problem.newJob.steps[0]!,
    minutes: 120,
    split: true,
    kind: 'work' as const,
    skill: 'coat',
    crew: 1,
  }
  const offer = soonest({ ...problem, newJob: { ...problem.newJob, steps: [work] } })
  expect(offer.plan.steps[0]!.start).toBe(minuteAt('2026-10-24', '16:30', zone))
  expect(offer.plan.steps[0]!.end).toBe(minuteAt('2026-10-25', '08:30', zone))
  expect(verify({ ...problem, newJob: { ...problem.newJob, steps: [work] } }, offer.plan)).toEqual([])
})
