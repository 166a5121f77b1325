import { describe, expect, it } from 'vitest'
import {
  liftAdvice,
  readUnNumber,
  type ShelvedProduct,
  transportEntry,
} from '../../../main/domain/hazard/index.ts'

const _shelved = (id: string, group: ShelvedProduct['group'], place = 'shelf A'): ShelvedProduct => ({
  id,
  name: `Product ${id}`,
  group,
  place,
})

describe('transport and lifting', () => {
  it('read a UN number as people write it', () => {
    expect(['1263', 'un 1263', 'UN-1263', ' UN1263 '].map(text => readUnNumber(text))).toEqual(
      Array(4).fill('UN1263'),
    )
    expect(() => readUnNumber('12634')).toThrow(expect.objectContaining({ code: 'un-number-bad' }))
    expect(transportEntry('UN0004')).toBeNull()
    expect(() => transportEntry('UN1090', 'III')).toThrow(/packing group II, not III/)
    expect(() => transportEntry('UN1950', 'II')).toThrow(/no packing group/)
  })

  it('refuse a lift that is none', () => {
    const lift = {
      horizontalCm: 40,
      verticalCm: 30,
      travelCm: 50,
      asymmetryDeg: 0,
      frequencyMultiplier: 1,
      couplingMultiplier: 1,
      loadKg: 10,
    }
    expect(() => liftAdvice({ ...lift, couplingMultiplier: 1.2 })).toThrow(
      expect.objectContaining({ field: 'couplingMultiplier' }),
    )
    expect(() => liftAdvice({ ...lift, loadKg: Number.NaN })).toThrow(
      expect.objectContaining({ field: 'loadKg' }),
    )
  })
})
