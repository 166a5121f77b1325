import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { atWall, wallMinuteOf } from '../../../main/domain/calendar/index.ts'
import { clockOver, cureClock } from '../../../main/domain/cure/clock.ts'
import {
  type CureProfile,
  clockMilestones,
  commonPracticeProfile,
  milestones,
} from '../../../main/domain/cure/index.ts'
import { momentNames } from '../../../main/domain/cure/milestones.ts'
import { neverFaster, rateOf } from '../../../main/domain/cure/rate.ts'
import { stretchesFrom } from '../../../main/domain/cure/stretches.ts'
import type { BayTemperatures } from '../../../main/domain/cure/temperatures.ts'
import { laidAt, logs, rules, sheetProfile } from './profiles.ts'

const bay = (over: Partial<BayTemperatures>): BayTemperatures => ({
  readings: [],
  usualC: 20,
  nowAt: 0,
  ...over,
})

describe('the cure clock', () => {
  it('is the elapsed time, exactly, at the reference temperature', () => {
    fc.assert(
      fc.property(rules, logs(60, 20, 20), fc.integer({ min: 0, max: 5000 }), (rate, readings, elapsed) => {
        const profile = { ...sheetProfile, rate }
        const clock = cureClock(profile, 0, bay({ readings, nowAt: readings.at(-1)!.at }))
        expect(clock.ageAt(elapsed)).toBe(elapsed)
        expect(clock.reachedAt(elapsed)).toBe(elapsed)
        const reached = clockMilestones(laidAt(profile, 0, { readings, nowAt: readings.at(-1)!.at }))
        const plain = milestones(profile, 0)
        for (const name of momentNames) expect(reached[name]?.at ?? null).toBe(plain[`${name}At`])
      }),
    )
  })

  it('equals the closed form of a piecewise-constant history within 1e-9', () => {
    fc.assert(
      fc.property(
        rules,
        fc.array(
          fc.record({
            minutes: fc.integer({ min: 1, max: 600 }),
            celsius: fc.double({ min: -10, max: 45, noNaN: true }),
          }),
          { minLength: 1, maxLength: 30 },
        ),
        (rule, pieces) => {
          const log = stretchesFrom(0, pieces.length)
          for (const { minutes, celsius } of pieces)
            log.add(log.endAt() + minutes, celsius, celsius, 'measured')
          // Written out again from the formulas, apart from the code under test.
          const speed = (c: number) =>
            rule.rule === 'arrhenius'
              ? Math.exp(-rule.activationOverRK * (1 / (c + 273.15) - 1 / 293.15))
              : rule.rule === 'doubling'
                ? 2 ** ((c - 20) / 10)
                : Math.max(0, (c - rule.datumC) / (20 - rule.datumC))
          const closed = pieces.reduce(
            (sum, { minutes, celsius }) => sum + minutes * Math.min(1, speed(celsius)),
            0,
          )
          const clock = clockOver(log, neverFaster(rateOf(rule, 20), 20))
          expect(Math.abs(clock.ageAt(log.endAt()) - closed)).toBeLessThanOrEqual(1e-9)
        },
      ),
    )
  })

  it('finds the minute of an age and the age of a minute, each undoing the other', () => {
    fc.assert(
      fc.property(
        rules,
        logs(75, -10, 25),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 0.001, max: 1.5, noNaN: true }),
        (rate, readings, begin, share) => {
          const end = readings.at(-1)!.at
          const coatEndAt = Math.floor(begin * end)
          const profile = { ...sheetProfile, rate }
          const clock = cureClock(profile, coatEndAt, bay({ readings, usualC: 15, nowAt: end }))
          const at = coatEndAt + share * (end - coatEndAt)
          const age = clock.ageAt(at)
          fc.pre(age > 0.01)
          const back = clock.reachedAt(age)!
          // Where the bay was at a standstill many minutes share an age: the first of them is meant.
          expect(back).toBeLessThanOrEqual(at + 1e-6)
          expect(Math.abs(clock.ageAt(back) - age)).toBeLessThan(1e-6)
          expect(clock.ageAt(at + 1)).toBeGreaterThanOrEqual(age)
        },
      ),
      { numRuns: 400 },
    )
  })

  it('never puts a milestone earlier when any reading is colder, nor before its time at the reference', () => {
    fc.assert(
      fc.property(
        rules,
        logs(150),
        fc.nat(),
        fc.double({ min: 0.01, max: 25, noNaN: true }),
        fc.integer({ min: 0, max: 2000 }),
        fc.double({ min: 12, max: 30, noNaN: true }),
        (rate, readings, pick, colder, coatEndAt, usualC) => {
          const profile = { ...sheetProfile, rate }
          const reached = (log: typeof readings) =>
            clockMilestones(laidAt(profile, coatEndAt, { readings: log, usualC, nowAt: 2500 }))
          const before = reached(readings)
          const chosen = pick % readings.length
          const after = reached(
            readings.map((reading, i) =>
              i === chosen ? { at: reading.at, celsius: reading.celsius - colder } : reading,
            ),
          )
          const plain = milestones(profile, coatEndAt)
          for (const name of momentNames) {
            const at = before[name]?.at ?? Number.POSITIVE_INFINITY
            expect(after[name]?.at ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(at)
            expect(at).toBeGreaterThanOrEqual(plain[`${name}At`] ?? Number.NEGATIVE_INFINITY)
          }
        },
      ),
      { numRuns: 300 },
    )
  })

  it('lengthens a hold in a cold bay and does not shorten one in a hot bay', () => {
    const at = (celsius: number) => {
      const profile: CureProfile = commonPracticeProfile()
      return clockMilestones(laidAt(profile, 0, { usualC: celsius })).handoverSafe!.at
    }
    // Rate doubles every 10 °C: common practice, no source.
    expect([at(0), at(10), at(20), at(30), at(45)]).toEqual([2880, 1440, 720, 720, 720])
  })

  it('lasts its real minutes through the clock-change nights (IANA time zone database)', () => {
    for (const [zone, date, skipped] of [
      ['America/New_York', '2026-03-07', 60],
      ['America/New_York', '2027-11-06', -60],
      ['Europe/Berlin', '2026-10-24', -60],
      ['Europe/Berlin', '2027-03-27', 60],
    ] as const) {
      const coatEndAt = atWall(date, 17 * 60 + 30, zone)
      const readings = Array.from({ length: 80 }, (_, i) => ({ at: coatEndAt - 30 + i * 10, celsius: 20 }))
      const profile = commonPracticeProfile()
      const safe = clockMilestones(laidAt(profile, coatEndAt, { readings, nowAt: coatEndAt + 700 }))
        .handoverSafe!
      expect(safe.at).toBe(coatEndAt + 720)
      expect(wallMinuteOf(safe.at, zone)).toBe(5 * 60 + 30 + skipped)
      expect(safe.parts).toEqual({ measuredMin: 700, assumedMin: 0, projectedMin: 20 })
    }
  })

  it('says null where the bay is too cold ever to get there', () => {
    const profile: CureProfile = { ...sheetProfile, rate: { rule: 'linear', datumC: 5 } }
    const clock = cureClock(profile, 0, bay({ usualC: 4 }))
    expect(clock.reachedAt(1)).toBeNull()
    expect(clock.ageAt(1_000_000)).toBe(0)
    expect(clockMilestones(laidAt(profile, 0, { usualC: 4 })).handoverSafe).toBeNull()
  })

  it('is 0 before the coat is finished', () => {
    const clock = cureClock(sheetProfile, 1000, bay({ nowAt: 500 }))
    expect([clock.ageAt(0), clock.ageAt(1000), clock.reachedAt(0), clock.coatEndAt]).toEqual([
      0, 0, 1000, 1000,
    ])
    expect(clock.partsUntil(900)).toEqual({ measuredMin: 0, assumedMin: 0, projectedMin: 0 })
  })
})

describe('heated cure', () => {
  const clockWith = (heatings: Parameters<typeof cureClock>[3], celsius = 20) =>
    cureClock(sheetProfile, 0, bay({ usualC: celsius, nowAt: 0 }), heatings)
  // The sheet's row: 60 °C for 30 minutes stands for 720.
  const session = { fromAt: 100, toAt: 140, panelC: 62 }

  it('gains what the row stands for, once its minutes are full and not before', () => {
    const clock = clockWith([session])
    expect(clock.ageAt(129)).toBe(129)
    expect(clock.ageAt(130)).toBe(100 + 720)
    expect(clock.ageAt(230)).toBe(100 + 720 + 100)
    expect(clock.reachedAt(500)).toBe(130)
    expect(clockMilestones(laidAt(sheetProfile, 0, {}, [session])).handoverAdvised!.at).toBe(130)
  })

  it('counts the heated minutes whole in a cold bay, and the rest cold', () => {
    const cold = clockWith([], 10)
    const warmed = clockWith([session], 10)
    expect(warmed.ageAt(100)).toBe(cold.ageAt(100))
    expect(warmed.ageAt(130)).toBeCloseTo(cold.ageAt(100) + 720, 9)
    expect(warmed.ageAt(190) - warmed.ageAt(130)).toBeCloseTo(cold.ageAt(60), 9)
  })

  it.each([
    ['too short', [{ ...session, toAt: 129 }]],
    ['too cool', [{ ...session, panelC: 59.9 }]],
    ['before the coat was finished', [{ fromAt: -40, toAt: 0, panelC: 80 }]],
    ['begun too long before the coat was finished', [{ fromAt: -40, toAt: 29, panelC: 80 }]],
  ])('gives nothing for a session %s', (_, heatings) => {
    const plain = clockWith([])
    for (const at of [100, 130, 600, 5000]) expect(clockWith(heatings).ageAt(at)).toBe(plain.ageAt(at))
  })

  it('counts one session only, and the row that gives most', () => {
    expect(clockWith([{ fromAt: 300, toAt: 340, panelC: 70 }, session]).ageAt(1000)).toBe(1000 + 690)
    const profile = {
      ...sheetProfile,
      forcedCure: [...sheetProfile.forcedCure, { panelC: 60, minutes: 40, standsForMin: 1440 }],
    }
    const clock = cureClock(profile, 0, bay({}), [session])
    expect([clock.ageAt(139), clock.ageAt(140)]).toEqual([139, 100 + 1440])
  })

  it('refuses a session that ends before it begins', () => {
    expect(() => clockWith([{ fromAt: 10, toAt: 10, panelC: 60 }])).toThrow(
      expect.objectContaining({ name: 'Refusal', field: 'heatings.0.toAt' }),
    )
  })

  it('never makes a milestone later, wherever the session lies in the log', () => {
    fc.assert(
      fc.property(
        logs(150),
        fc.integer({ min: -50, max: 3000 }),
        fc.integer({ min: 1, max: 100 }),
        (readings, fromAt, length) => {
          const temperatures = bay({ readings, usualC: 12, nowAt: 2000 })
          const plain = clockMilestones(laidAt(sheetProfile, 50, temperatures))
          const heating = { fromAt, toAt: fromAt + length, panelC: 65 }
          const warmed = clockMilestones(laidAt(sheetProfile, 50, temperatures, [heating]))
          for (const name of momentNames) expect(warmed[name]!.at).toBeLessThanOrEqual(plain[name]!.at)
        },
      ),
    )
  })
})
