// Figures of what is factory paint, a respray or filler: common practice, no source.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  carThickness,
  type ThicknessReading,
  usualThickness,
} from '../../../main/domain/measure/thickness.ts'

const on = (panel: string, ...ums: number[]): ThicknessReading[] =>
  ums.map((um, i) => ({ panel, spot: i + 1, um }))
const panelOf = (readings: ThicknessReading[], name: string) =>
  carThickness(readings).panels.find(({ panel }) => panel === name)!

const rest = [
  ...on('Roof', 118, 121, 119),
  ...on('Boot lid', 124, 122, 125),
  ...on('Left wing', 116, 115, 118),
]

describe('paint thickness', () => {
  it('of a panel: spots are the mean of their readings, the middle and the spread of all', () => {
    const bonnet = [1, 1, 1, 2, 2, 2].map((spot, i) => ({
      panel: 'Bonnet',
      spot,
      um: [118, 121, 119, 240, 117, 122][i]!,
    }))
    expect(panelOf([...bonnet, ...rest], 'Bonnet')).toMatchObject({
      readings: 6,
      spots: [
        { spot: 1, um: expect.closeTo(119.333, 3) },
        { spot: 2, um: expect.closeTo(159.667, 3) },
      ],
      typicalUm: 120,
      madUm: 2,
      farOutUm: [240],
      verdict: 'as built',
      reason: null,
      belowFloor: false,
      budgetUm: 10,
    })
  })

  it.each<[string, string | RegExp, number[]]>([
    ['as built', '', [120, 124, 119]],
    ['likely repainted', /^210 µm, where the rest of the car is about 119 µm/, [205, 210, 230]],
    ['likely repainted', /^165 µm, where the rest/, [160, 165, 171]],
    ['likely filler', /^840 µm at its thickest/, [118, 840, 121]],
  ])('%s, with its reason', (verdict, reason, ums) => {
    const found = panelOf([...rest, ...on('Bonnet', ...ums)], 'Bonnet')
    expect(found.verdict).toBe(verdict)
    if (reason === '') expect(found.reason).toBeNull()
    else expect(found.reason).toMatch(reason)
  })

  it('a car painted all over has no rest to compare with: the usual most of a factory coat stands in', () => {
    const found = carThickness([...on('Bonnet', 230), ...on('Roof', 226)])
    expect(found.panels.map(({ verdict }) => verdict)).toEqual(['likely repainted', 'likely repainted'])
    expect(found.panels[0]!.reason).toMatch(/factory coat is rarely over 180/)
    expect([found.typicalUm, found.leastUm]).toEqual([228, 226])
  })

  it('under the floor nothing is left; just over it the doubt of the gauge eats what there is', () => {
    const budget = (um: number) => panelOf(on('Roof', um, 130), 'Roof')
    expect(budget(79)).toMatchObject({ belowFloor: true, budgetUm: 0 })
    expect(budget(80)).toMatchObject({ belowFloor: false, budgetUm: 0 })
    expect(budget(88)).toMatchObject({ belowFloor: false, budgetUm: 5 })
    expect(budget(120)).toMatchObject({ budgetUm: usualThickness.mostTakenUm })
  })

  it('the order of the readings is no matter, and a thinner spot never leaves more to take off', () => {
    const readings = fc.array(
      fc.record({
        panel: fc.constantFrom('Roof', 'Bonnet', 'Left wing', 'Boot lid'),
        spot: fc.integer({ min: 1, max: 4 }),
        um: fc.integer({ min: 40, max: 900 }),
      }),
      { minLength: 1, maxLength: 40 },
    )
    fc.assert(
      fc.property(readings, fc.integer({ min: 1, max: 39 }), (all, thinner) => {
        const byName = (list: ThicknessReading[]) =>
          new Map(
            carThickness(list).panels.map(each => [each.panel, { ...each, farOutUm: each.farOutUm.length }]),
          )
        const [straight, back] = [byName(all), byName([...all].reverse())]
        for (const [panel, found] of straight) {
          const other = back.get(panel)!
          expect(other.leastUm).toBeCloseTo(found.leastUm, 8)
          expect({ ...other, meanUm: 0, sdUm: 0, leastUm: 0, mostUm: 0, spots: 0, budgetUm: 0 }).toEqual({
            ...found,
            meanUm: 0,
            sdUm: 0,
            leastUm: 0,
            mostUm: 0,
            spots: 0,
            budgetUm: 0,
          })
          const worn = byName([...all, { panel, spot: 9, um: thinner }]).get(panel)!
          expect(worn.budgetUm).toBeLessThanOrEqual(found.budgetUm)
          expect(worn.belowFloor).toBe(true)
        }
      }),
    )
  })

  it('says nothing of a car nobody has measured, and refuses what is no paint', () => {
    expect(carThickness([])).toEqual({ panels: [], typicalUm: null, leastUm: null })
    for (const um of [0, -3, 5_001, Number.NaN])
      expect(() => carThickness(on('Roof', um))).toThrow(expect.objectContaining({ field: 'readings.0.um' }))
  })
})
