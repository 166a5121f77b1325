import { describe, expect, it } from 'vitest'
import { flammableStock } from '../../../main/domain/hazard/index.ts'

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
    expect(flammableStock(products, 5000, show, 'us-osha')).toEqual({
      totalMl: 4500,
      byCode: { H224: 0, H225: 4000, H226: 500, H227: 0 },
      combustibleMl: 0,
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

  it('counts category 4 where the US rules do (29 CFR 1910.106(a)(19)(iv)), and tells it apart elsewhere', () => {
    const oil = [...products, { id: 'oil', volumeMl: 1000, codes: ['H227'] }]
    expect(flammableStock(oil, 5000, show, 'us-osha')).toMatchObject({
      totalMl: 5500,
      combustibleMl: 0,
      state: 'over',
      byCode: { H227: 1000 },
    })
    const elsewhere = flammableStock(oil, 5000, show, 'un-ghs')
    expect(elsewhere).toMatchObject({ totalMl: 4500, combustibleMl: 1000, state: 'near' })
    expect(elsewhere.message).toContain('1000 mL of combustible liquid (H227), not counted')
  })

  it('has no limit of its own', () => {
    expect(flammableStock(products, null, show, 'us-osha')).toMatchObject({ state: 'no limit', share: null })
    expect(flammableStock(products, 4499, show, 'us-osha').state).toBe('over')
    expect(flammableStock(products, 9000, show, 'us-osha').state).toBe('within')
  })

  it('refuses a limit of nothing and a negative stock', () => {
    expect(() => flammableStock([], 0, show, 'us-osha')).toThrow(
      expect.objectContaining({ field: 'limitMl' }),
    )
    expect(() => flammableStock([{ id: 'x', volumeMl: -1, codes: [] }], 1, show, 'us-osha')).toThrow(
      expect.objectContaining({ field: 'products.0.volumeMl' }),
    )
  })
})
