import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type CureProfile, waitBetween } from '../../../main/domain/cure/index.ts'
import { usualOrder, windowOver } from '../../../main/domain/cure/panels.ts'
import { windowClock } from '../../../main/domain/cure/windowClock.ts'
import { rules, sheetProfile } from './profiles.ts'

/** A car of panels done one after the other, each with its share of either layer. */
const cars = fc.array(fc.integer({ min: 3, max: 8 }), { minLength: 24, maxLength: 40 }).map(parts => {
  const whole = parts.reduce((a, b) => a + b, 0)
  return parts.map(part => part / whole)
})

/** How long each panel waits from the end of its own first layer to the start of its own second. */
function waitsOf(shares: readonly number[], firstMin: number, nextMin: number, wait: number): number[] {
  let before = 0
  return shares.map(share => {
    const endAt = (before + share) * firstMin
    const startAt = firstMin + wait + before * nextMin
    before += share
    return startAt - endAt
  })
}

const layers = fc.record({
  firstMin: fc.integer({ min: 1, max: 300 }),
  nextMin: fc.integer({ min: 1, max: 300 }),
  minMin: fc.integer({ min: 0, max: 300 }),
  open: fc.integer({ min: 0, max: 600 }),
})

describe('the wait between two layers', () => {
  it('is 75 minutes and not 180 where layers of 105 and 90 minutes have a limit of 180', () => {
    expect(waitBetween({ minMin: 60, maxMin: 180 }, 105, 90)).toEqual({ least: 0, most: 75 })
    // The first panel waits its 105 minutes of the first layer and those 75.
    expect(Math.max(...waitsOf([0.001, 0.999], 105, 90, 75))).toBeGreaterThan(179)
  })

  it('leaves what is missing of the least wait, and none where the layers are too long for the window', () => {
    expect(waitBetween({ minMin: 120, maxMin: 240 }, 80, 96)).toEqual({ least: 50, most: 144 })
    expect(waitBetween({ minMin: 30, maxMin: 90 }, 105, 60).most).toBe(-15)
    expect(waitBetween({ minMin: 30, maxMin: null }, 105, 60).most).toBeNull()
  })

  it('keeps every panel of a car within its window, panel by panel', () => {
    fc.assert(
      fc.property(cars, layers, fc.nat(600), (shares, { firstMin, nextMin, minMin, open }, pick) => {
        fc.pre(Math.max(...shares) <= usualOrder.early)
        const { least, most } = waitBetween({ minMin, maxMin: minMin + open }, firstMin, nextMin)
        fc.pre(most !== null && most >= least)
        const wait = least + (pick % (most! - least + 1))
        for (const waited of waitsOf(shares, firstMin, nextMin, wait)) {
          expect(waited).toBeGreaterThanOrEqual(minMin - 1e-9)
          expect(waited).toBeLessThanOrEqual(minMin + open + 1e-9)
        }
      }),
    )
  })

  it('is never more with a wider panel order', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(layers, share, share, share, share, ({ firstMin, nextMin, minMin, open }, a, b, c, d) => {
        const wait = (early: number, late: number) =>
          waitBetween({ minMin, maxMin: minMin + open }, firstMin, nextMin, { early, late })
        const narrow = wait(Math.min(a, b), Math.min(c, d))
        const wide = wait(Math.max(a, b), Math.max(c, d))
        expect(wide.least).toBeGreaterThanOrEqual(narrow.least)
        expect(wide.most).toBeLessThanOrEqual(narrow.most!)
      }),
    )
  })

  it('is at the reference temperature what the running clocks say', () => {
    fc.assert(
      fc.property(layers, rules, ({ firstMin, nextMin, minMin, open }, rate) => {
        const recoat = { minMin, maxMin: minMin + open }
        const profile: CureProfile = { ...sheetProfile, recoat, rate }
        const laying = { fromAt: 1000, toAt: 1000 + firstMin }
        const clock = windowClock(profile, 'recoat', laying, { readings: [], usualC: 20, nowAt: 0 })!
        const { least, most } = waitBetween(recoat, firstMin, nextMin)
        expect(windowOver(clock, recoat, laying, nextMin)).toEqual({
          opensAt: laying.toAt + least,
          closesAt: laying.toAt + most!,
        })
      }),
    )
  })
})
