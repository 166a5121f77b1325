import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cureClock } from '../../../main/domain/cure/clock.ts'
import { commonPracticeProfile, usualTemperature } from '../../../main/domain/cure/index.ts'
import { temperatureStretches } from '../../../main/domain/cure/temperatures.ts'
import { logs } from './profiles.ts'

const seen = (fromAt: number, temperatures: Parameters<typeof temperatureStretches>[1]) => {
  const log = temperatureStretches(fromAt, temperatures)
  return Array.from({ length: log.count() }, (_, i) => [
    log.from(i),
    log.to(i),
    log.fromC(i),
    log.toC(i),
    log.part(i),
  ])
}
const ever = Number.POSITIVE_INFINITY

describe('what temperature a coat has had', () => {
  it('is measured between readings near each other, and projected from now on', () => {
    const readings = [
      { at: 100, celsius: 10 },
      { at: 120, celsius: 20 },
      { at: 170, celsius: 15 },
    ]
    expect(seen(105, { readings, usualC: 18, nowAt: 170 })).toEqual([
      [105, 120, 12.5, 20, 'measured'],
      [120, 170, 20, 15, 'measured'],
      [170, ever, 18, 18, 'projected'],
    ])
  })

  it('is assumed the coldest known over a gap past the limit', () => {
    const readings = [
      { at: 0, celsius: 22 },
      { at: 61, celsius: 16 },
      { at: 200, celsius: 25 },
    ]
    expect(seen(0, { readings, usualC: 18, nowAt: 200 })).toEqual([
      [0, 61, 16, 16, 'assumed'],
      [61, 200, 16, 16, 'assumed'],
      [200, ever, 18, 18, 'projected'],
    ])
    expect(seen(0, { readings, usualC: 18, nowAt: 200, gapLimitMin: 61 })[0]).toEqual([
      0,
      61,
      22,
      16,
      'measured',
    ])
  })

  it('holds the nearest reading for the limit before the first and after the last, then the colder of it and usual', () => {
    const readings = [{ at: 100, celsius: 22 }]
    expect(seen(0, { readings, usualC: 18, nowAt: 300 })).toEqual([
      [0, 40, 18, 18, 'assumed'],
      [40, 100, 22, 22, 'assumed'],
      [100, 160, 22, 22, 'assumed'],
      [160, 300, 18, 18, 'assumed'],
      [300, ever, 18, 18, 'projected'],
    ])
  })

  it('is assumed usual without a log, and all projected for a coat still to come', () => {
    expect(seen(0, { readings: [], usualC: 17, nowAt: 90 })).toEqual([
      [0, 90, 17, 17, 'assumed'],
      [90, ever, 17, 17, 'projected'],
    ])
    expect(seen(500, { readings: [{ at: 0, celsius: 5 }], usualC: 17, nowAt: 90 })).toEqual([
      [500, ever, 17, 17, 'projected'],
    ])
  })

  it('does not look at readings after now', () => {
    const readings = [
      { at: 0, celsius: 20 },
      { at: 30, celsius: -5 },
    ]
    expect(seen(0, { readings, usualC: 20, nowAt: 20 })).toEqual([
      [0, 20, 20, 20, 'assumed'],
      [20, ever, 20, 20, 'projected'],
    ])
  })

  it('has no hole and no overlap, and its parts add up to the time passed', () => {
    fc.assert(
      fc.property(
        logs(150),
        fc.integer({ min: -200, max: 3000 }),
        fc.integer({ min: -200, max: 6000 }),
        fc.integer({ min: 0, max: 9000 }),
        (readings, coatEndAt, nowAt, wait) => {
          const temperatures = { readings, usualC: 19, nowAt }
          const list = seen(coatEndAt, temperatures)
          list.forEach(([from, to], i) => {
            expect(from).toBe(i === 0 ? coatEndAt : list[i - 1]![1])
            expect(to).toBeGreaterThan(from as number)
          })
          expect(list.at(-1)![1]).toBe(ever)
          const clock = cureClock(commonPracticeProfile(), coatEndAt, temperatures)
          const parts = clock.partsUntil(coatEndAt + wait)
          expect(parts.measuredMin + parts.assumedMin + parts.projectedMin).toBe(wait)
          expect(parts.projectedMin).toBe(Math.max(0, coatEndAt + wait - Math.max(nowAt, coatEndAt)))
        },
      ),
    )
  })
})

describe('what a bay usually has', () => {
  it('is the median of the last week', () => {
    const day = 1440
    const readings = [40, 10, 30, 20, 12].map((celsius, i) => ({ at: i * 2 * day, celsius }))
    // Of days 0, 2, 4, 6, 8 the week up to day 8 holds days 2 to 8.
    expect(usualTemperature(readings, 8 * day)).toBe(16)
    expect(usualTemperature(readings, 4 * day)).toBe(30)
    expect(usualTemperature(readings, -1)).toBeNull()
    expect(usualTemperature(readings, 100 * day)).toBeNull()
  })
})
