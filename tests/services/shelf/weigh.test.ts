import { describe, expect, it } from 'vitest'
import { contentByWeight, weighedCenti, whyNotWeighed } from '../../../main/services/shelf/weigh.ts'

const liquid: Parameters<typeof whyNotWeighed>[0] = {
  id: 'p',
  name: 'Ovrel Two',
  kind: 'coating',
  unit: 'ml',
  densityGPerMl: 1.05,
  lifeAfterOpeningDays: null,
  place: '',
  serviceClass: 'usual',
  holdsUpBookings: true,
}
const bottle: NonNullable<Parameters<typeof whyNotWeighed>[1]> = {
  id: 'b',
  productId: 'p',
  number: 7,
  sizeId: 's',
  sizeLabel: '50 ml',
  batch: null,
  receivedOn: '2026-04-01',
  expiresOn: null,
  openedOn: null,
  lifeAfterOpeningDays: null,
  waterParts: null,
  tareG: 62,
  centi: 4_000,
}

describe('a bottle on the scales', () => {
  it('is not weighed where the weight would say nothing, and says why', () => {
    expect(whyNotWeighed({ ...liquid, unit: 'piece' }, bottle)).toContain('counted')
    expect(whyNotWeighed({ ...liquid, densityGPerMl: null }, bottle)).toContain('density of Ovrel Two')
    expect(whyNotWeighed(liquid, undefined)).toContain('No bottle of Ovrel Two')
    expect(whyNotWeighed(liquid, { ...bottle, tareG: null })).toContain('empty bottle')
    expect(whyNotWeighed({ ...liquid, unit: 'g', densityGPerMl: null }, bottle)).toBeNull()
    expect(whyNotWeighed(liquid, bottle)).toBeNull()
    expect(() => contentByWeight(liquid, undefined, 80)).toThrow(
      expect.objectContaining({ code: 'cannot-weigh' }),
    )
  })

  // 62 g empty; 21 g of 1.05 g/ml are 20 ml. Density is mass by volume.
  it('holds its weight less the empty bottle, by the density', () => {
    expect(contentByWeight(liquid, bottle, 83)).toBe(2_000)
    expect(contentByWeight({ ...liquid, unit: 'g', densityGPerMl: null }, bottle, 83)).toBe(2_100)
    expect(weighedCenti(liquid, bottle, 83)).toBe(2_000)
  })

  it('is empty where the scales are half a gram off, and misread below that', () => {
    expect(contentByWeight(liquid, bottle, 61.5)).toBe(0)
    expect(weighedCenti(liquid, bottle, 62)).toBe(4_000)
    for (const grossG of [61.4, undefined, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => contentByWeight(liquid, bottle, grossG)).toThrow(
        expect.objectContaining({ code: 'weight-bad', field: 'weighed.grossG' }),
      )
  })

  it('that holds more than the ledger says is to be counted first', () => {
    // 42 g are 40 ml: all the ledger has, so nothing was used.
    expect(weighedCenti(liquid, bottle, 104)).toBe(0)
    expect(() => weighedCenti(liquid, bottle, 106)).toThrow(
      expect.objectContaining({ code: 'weighs-more', message: expect.stringContaining('no. 7 holds') }),
    )
  })
})
