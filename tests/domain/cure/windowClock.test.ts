import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CureProfile, Heating } from '../../../main/domain/cure/index.ts'
import { windowOver } from '../../../main/domain/cure/panels.ts'
import type { BayTemperatures } from '../../../main/domain/cure/temperatures.ts'
import { windowClock } from '../../../main/domain/cure/windowClock.ts'
import { logs, rules, sheetProfile } from './profiles.ts'

/** A window of 60 to 180 minutes; the rate doubles every 10 °C (common practice, no source). */
const profile: CureProfile = {
  ...sheetProfile,
  recoat: { minMin: 60, maxMin: 180 },
  rate: { rule: 'doubling' },
  forcedCure: [],
}
const rowAt10 = { window: 'recoat' as const, fromC: 8, toC: 12, minMin: 90, maxMin: 300 }

/** The window over one panel finished at minute 0. */
function windowIn(
  of: CureProfile,
  temperatures: Partial<BayTemperatures>,
  heatings: readonly Heating[] = [],
  laying = { fromAt: 0, toAt: 0 },
  nextMin = 0,
) {
  const clock = windowClock(
    of,
    'recoat',
    laying,
    { readings: [], usualC: 20, nowAt: 0, ...temperatures },
    heatings,
  )
  return windowOver(clock!, of.recoat!, laying, nextMin)
}
const steady = (celsius: number, of = profile) => {
  const { opensAt, closesAt } = windowIn(of, { usualC: celsius })
  return [opensAt, closesAt]
}

describe('a window that closes', () => {
  it('opens later in the cold and is not kept open by it: 60 to 180 minutes are 120 to 180 at 10 °C', () => {
    expect(steady(20)).toEqual([60, 180])
    expect(steady(10)).toEqual([120, 180])
    expect(steady(0)).toEqual([240, 180])
  })

  it('closes sooner in the heat and is not opened by it: 60 to 90 minutes at 30 °C', () => {
    expect(steady(30)).toEqual([60, 90])
    expect(steady(40)).toEqual([60, 45])
  })

  it('follows a row of the sheet at both ends where there is one', () => {
    const sheet = {
      ...profile,
      windowRows: [rowAt10, { ...rowAt10, fromC: 28, toC: 32, minMin: 30, maxMin: 120 }],
    }
    expect(steady(10, sheet)).toEqual([90, 300])
    expect(steady(30, sheet)).toEqual([30, 120])
    expect(steady(20, sheet)).toEqual([60, 180])
    expect(steady(5, sheet)).toEqual([170, 180])
    // A row of the topper's is not the recoat window's.
    expect(steady(10, { ...profile, windowRows: [{ ...rowAt10, window: 'topper' }] })).toEqual([120, 180])
  })

  it('takes the hottest for what nobody measured, where it opens by the coldest', () => {
    // Ninety minutes without a reading between 10 and 30 °C.
    const readings = [
      { at: 0, celsius: 10 },
      { at: 90, celsius: 30 },
    ]
    const { opensAt, closesAt } = windowIn(profile, { readings, usualC: 20, nowAt: 90 })
    // 45 minutes of age by 90 at half the pace; 180 at the double.
    expect([opensAt, closesAt]).toEqual([105, 90])
  })

  it('is shut by a lamp that no row counts, and by a row that stands for more than the window', () => {
    const lamp = { fromAt: 10, toAt: 20, panelC: 60 }
    // Ten minutes at sixteen times the pace.
    expect(windowIn(profile, {}, [lamp]).closesAt).toBe(180 - 150)
    const sheet = { ...profile, forcedCure: [{ panelC: 60, minutes: 10, standsForMin: 720 }] }
    expect(windowIn(sheet, {}, [lamp])).toEqual({ opensAt: 20, closesAt: 20 })
  })

  it('counts each panel from its own end, in the cold as in the heat', () => {
    const laying = { fromAt: 0, toAt: 100 }
    // In the heat the first panel, done at minute 0, is over at 90; the last, done at 100, at 190, 60 into the next layer.
    expect(windowIn(profile, { usualC: 30 }, [], laying, 60).closesAt).toBe(90)
    expect(windowIn(profile, { usualC: 30 }, [], { fromAt: 90, toAt: 100 }, 60).closesAt).toBe(130)
    // In the cold the last panel is ripe at 220; its turn begins seven eighths into the next layer.
    expect(windowIn(profile, { usualC: 10 }, [], laying, 80).opensAt).toBe(150)
  })

  it('is none where the profile names none', () => {
    const temperatures = { readings: [], usualC: 20, nowAt: 0 }
    const laying = { fromAt: 0, toAt: 0 }
    expect(windowClock({ ...profile, recoat: null }, 'recoat', laying, temperatures)).toBeNull()
  })
})

describe('whatever the temperatures', () => {
  const rooms = fc.record({
    rate: rules,
    readings: logs(150, -5, 45),
    usualC: fc.double({ min: 5, max: 35, noNaN: true }),
    fromAt: fc.integer({ min: 0, max: 2000 }),
    layMin: fc.integer({ min: 0, max: 200 }),
    nextMin: fc.integer({ min: 0, max: 200 }),
  })

  it.each([
    ['a colder reading never opens a window earlier, nor keeps it open past its time at the reference', -1],
    ['a warmer one never closes it later, nor opens it later', 1],
  ])('%s', (_, way) => {
    fc.assert(
      fc.property(rooms, fc.nat(), fc.double({ min: 0.01, max: 25, noNaN: true }), (room, pick, by) => {
        const { rate, readings, usualC, fromAt, layMin, nextMin } = room
        const laying = { fromAt, toAt: fromAt + layMin }
        const of = { ...profile, rate }
        const window = (log: typeof readings) =>
          windowIn(of, { readings: log, usualC, nowAt: 2500 }, [], laying, nextMin)
        const chosen = pick % readings.length
        const before = window(readings)
        const after = window(
          readings.map((one, i) => (i === chosen ? { at: one.at, celsius: one.celsius + way * by } : one)),
        )
        const [cold, warm] = way < 0 ? [after, before] : [before, after]
        const late = (at: number | null) => at ?? Number.POSITIVE_INFINITY
        expect(late(cold.opensAt)).toBeGreaterThanOrEqual(late(warm.opensAt))
        expect(late(warm.closesAt)).toBeLessThanOrEqual(late(cold.closesAt))
        // And neither end is ever looser than at the reference temperature.
        const plain = windowIn(of, { usualC: 20 }, [], laying, nextMin)
        for (const each of [cold, warm]) {
          expect(late(each.opensAt)).toBeGreaterThanOrEqual(plain.opensAt!)
          expect(late(each.closesAt)).toBeLessThanOrEqual(plain.closesAt!)
        }
      }),
      { numRuns: 400 },
    )
  })
})
