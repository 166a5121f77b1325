import { describe, expect, it } from 'vitest'
import { flammableStock } from '../../../main/domain/hazard/index.ts'
import type { ShelvedProduct } from '../../../main/domain/hazard/storage.ts'

const _shelved = (id: string, group: ShelvedProduct['group'], place = 'shelf A'): ShelvedProduct => ({
  id,
  name: `Product ${id}`,
  group,
  place,
})

describe('flammable stock', () => {
  const show = (volumeMl: number) => `${volumeMl} mL`
  const products = [
    { id: 'wipe', volumeMl: 4000, codes: ['H225', 'H319'] },
    { id: 'coat', volumeMl: 500, codes: ['H226'] },
    { id: 'can', volumeMl: 400, codes: ['H222', 'H229'] },
    { id: 'wash', volumeMl: 20000, codes: ['H318'] },
    { id: 'blank', volumeMl: 750, codes: null },
  ]

  it('adds up flammable liquids only, and tells what it could not count', () => {
    expect(flammableStock(products, 5000, show)).toEqual({
      totalMl: 4500,
      byCode: { H224: 0, H225: 4000, H226: 500 },
      aerosolMl: 400,
      silentIds: ['blank'],
      silentMl: 750,
      limitMl: 5000,
      share: 0.9,
      state: 'near',
      message:
        '4500 mL of flammable liquid on the shelf, close to your limit of 5000 mL. Not counted: 750 mL in one product ' +
        'whose data sheet is silent or missing. The local code decides.',
    })
  })

  it('has no limit of its own', () => {
    expect(flammableStock(products, null, show)).toMatchObject({ state: 'no limit', share: null })
    expect(flammableStock(products, 4499, show).state).toBe('over')
    expect(flammableStock(products, 9000, show).state).toBe('within')
  })

  it('refuses a limit of nothing and a negative stock', () => {
    expect(() => flammableStock([], 0, show)).toThrow(expect.objectContaining({ field: 'limitMl' }))
    expect(() => flammableStock([{ id: 'x', volumeMl: -1, codes: [] }], 1, show)).toThrow(
      expect.objectContaining({ field: 'products.0.volumeMl' }),
    )
  })
})
