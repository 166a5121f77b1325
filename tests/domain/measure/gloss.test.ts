// ISO 2813, ASTM D523: see each case.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  averageGloss,
  checkTile,
  type Geometry,
  type GlossReading,
  geometries,
  geometryFor,
  glossChange,
  glossOfIndex,
  mayAverage,
  reflectance,
} from '../../../main/domain/measure/gloss.ts'
import { type GlossSet, glossDifferences, glossWarnings } from '../../../main/domain/measure/glossSet.ts'
import { type Case, expectNear, runCases, setAside } from '../../reference/cases.ts'

type Read = { geometryDeg?: Geometry; geometry?: Geometry; gu: number }
const reading = ({ geometryDeg, geometry, gu }: Read): GlossReading => ({
  geometryDeg: (geometryDeg ?? geometry)!,
  gu,
})

runCases(
  'gloss',
  [
    [/^glass-/, 'gloss-of-index'],
    [/^geometry-/, 'choose-geometry'],
    [/^average-/, 'not-comparable'],
  ],
  {
    'fresnel-reflectance': (
      entry: Case<{ refractiveIndex: number; geometryDeg: number }, { reflectance: number }>,
    ) =>
      expectNear(
        reflectance(entry.input.refractiveIndex, entry.input.geometryDeg),
        entry.expected.reflectance,
        entry.tolerance,
      ),

    'gloss-of-index': (entry: Case<{ refractiveIndex: number }, Record<`gu${Geometry}`, number>>) => {
      for (const geometry of geometries)
        expectNear(
          glossOfIndex(entry.input.refractiveIndex, geometry),
          entry.expected[`gu${geometry}`],
          entry.tolerance,
        )
    },

    'gloss-slope': (
      entry: Case<{ refractiveIndex: number; deltaIndex: number }, Record<`deltaGu${Geometry}`, number>>,
    ) => {
      const { refractiveIndex, deltaIndex } = entry.input
      for (const geometry of geometries)
        expectNear(
          glossOfIndex(refractiveIndex + deltaIndex, geometry) - glossOfIndex(refractiveIndex, geometry),
          entry.expected[`deltaGu${geometry}`],
          entry.tolerance,
        )
    },

    'choose-geometry': (
      entry: Case<{ at60?: number; reading60Gu?: number }, { use?: number; geometryDeg?: number }>,
    ) => {
      const { at60, reading60Gu } = entry.input
      expect(geometryFor((reading60Gu ?? at60)!)).toBe(entry.expected.geometryDeg ?? entry.expected.use)
    },

    'not-comparable': (entry: Case<{ readings: Read[] }, { mayAverage: boolean; sameSurface?: boolean }>) => {
      setAside(entry.expected.sameSurface, 'what was measured, and no result of it')
      const readings = entry.input.readings.map(reading)
      expect(mayAverage(readings)).toBe(entry.expected.mayAverage)
      expect(() => averageGloss(readings)).toThrow(/mixed geometries/)
    },

    'average-readings': (entry: Case<{ readings: Read[] }, { geometryDeg: number; meanGu: number }>) => {
      const found = averageGloss(entry.input.readings.map(reading))
      expect(found.geometryDeg).toBe(entry.expected.geometryDeg)
      expectNear(found.meanGu, entry.expected.meanGu, entry.tolerance)
    },

    'gloss-change': (
      entry: Case<{ before: GlossReading; after: GlossReading }, { changeGu?: number; error?: string }>,
    ) => {
      const change = () => glossChange(entry.input.before, entry.input.after)
      if (entry.expected.error) expect(change).toThrow(entry.expected.error)
      else expectNear(change(), entry.expected.changeGu!, entry.tolerance)
    },

    'working-standard': (
      entry: Case<
        { tileAssignedGu: Record<string, number>; read: Record<string, number>; allowedGu: number },
        { withinTolerance: boolean; scale: number }
      >,
    ) => {
      const { tileAssignedGu, read, allowedGu } = entry.input
      for (const [geometry, assigned] of Object.entries(tileAssignedGu)) {
        const found = checkTile(assigned, read[geometry]!, allowedGu)
        expect(found.withinTolerance).toBe(entry.expected.withinTolerance)
        expectNear(found.scale, entry.expected.scale, entry.tolerance)
      }
    },
  },
)

const set = (part: Partial<GlossSet> = {}): GlossSet => ({
  instrument: 'GM-1',
  tile: 'T-7',
  substrate: 'gloss',
  geometryDeg: 20,
  tileGu: 94.8,
  startGu: 94.8,
  endGu: 94.6,
  panels: [{ panel: 'Bonnet', gu: [80, 81, 80.5] }],
  ...part,
})

describe('a set of readings', () => {
  it('calibrated, checked and read at its angle says nothing', () =>
    expect(glossWarnings(set(), null, 1)).toEqual([]))

  it.each<[RegExp, Partial<GlossSet>, GlossSet | null]>([
    [/not calibrated before this set/, { startGu: null }, null],
    [/changed from matte to gloss: calibrate/, { startGu: null }, set({ substrate: 'matte' })],
    [/read 93.1 before the set/, { startGu: 93.1, endGu: 93.1 }, null],
    [/drifted from 94.8 to 93.7/, { endGu: 93.7 }, null],
    [/not read after the set/, { endGu: null }, null],
    [/serial numbers/, { tile: ' ' }, null],
    [/read it at 20°/, { geometryDeg: 60 }, null],
    [/read it at 85°/, { geometryDeg: 60, panels: [{ panel: 'Roof', gu: [4, 9.9] }] }, null],
  ])('warns: %s', (words, part, before) => {
    expect(glossWarnings(set(part), before, 1)).toEqual([expect.stringMatching(words)])
  })

  it('drift of exactly what is allowed, and a middling surface at 60°, are let pass', () => {
    expect(glossWarnings(set({ endGu: 93.8 }), null, 1)).toEqual([])
    expect(
      glossWarnings(set({ geometryDeg: 60, panels: [{ panel: 'Roof', gu: [70, 71] }] }), null, 1),
    ).toEqual([])
  })

  it('is compared at one angle only, and a change repeating could make is not real', () => {
    const after = [
      set({
        panels: [
          { panel: 'Bonnet', gu: [81, 81] },
          { panel: 'Roof', gu: [90] },
        ],
      }),
      set({ geometryDeg: 60, panels: [{ panel: 'Bonnet', gu: [99] }] }),
    ]
    expect(glossDifferences([set()], after, 0.5)).toEqual([
      {
        panel: 'Bonnet',
        geometryDeg: 20,
        beforeGu: 80.5,
        afterGu: 81,
        changeGu: 0.5,
        // ISO 5725-6: 2.8 × 0.5 × √(1/6 + 1/4).
        limitGu: expect.closeTo(0.9037, 4),
        real: false,
      },
    ])
  })
})

describe('gloss', () => {
  const index = fc.double({ min: 1.01, max: 3.9, noNaN: true })
  it('rises with the index at 20 and 60°, and with the angle; the standard glass is 100 at each', () => {
    fc.assert(
      fc.property(index, fc.constantFrom(20, 60), (n, geometry) => {
        expect(glossOfIndex(n + 0.1, geometry)).toBeGreaterThan(glossOfIndex(n, geometry))
        expect(reflectance(n, 89)).toBeGreaterThan(reflectance(n, 60))
      }),
    )
    // At 85° it is highest near an index of 1.88 and falls again: only the standard's own range of glasses rises there.
    expect(glossOfIndex(1.9, 85)).toBeGreaterThan(glossOfIndex(2.1, 85))
    for (const geometry of geometries) expect(glossOfIndex(1.567, geometry)).toBeCloseTo(100, 12)
    // Upright both Fresnel terms are ((n − 1) / (n + 1))².
    expect(reflectance(1.5, 0)).toBeCloseTo(0.04, 12)
  })

  it.each<[string, string, () => unknown]>([
    ['index-bad', 'refractiveIndex', () => glossOfIndex(0.9, 60)],
    ['angle-bad', 'angleDeg', () => reflectance(1.5, 90)],
    ['gloss-bad', 'reading60Gu', () => geometryFor(-1)],
    [
      'gloss-bad',
      'readings.1.gu',
      () =>
        averageGloss([
          { geometryDeg: 60, gu: 1 },
          { geometryDeg: 60, gu: 2_001 },
        ]),
    ],
    ['too-few', 'readings', () => averageGloss([])],
    ['tile-bad', 'readGu', () => checkTile(94, 0, 1)],
    ['reading-bad', 'reading60Gu', () => geometryFor(Number.NaN)],
  ])('refuses %s in %s', (code, field, act) => {
    expect(act).toThrow(expect.objectContaining({ code, field }))
  })
})
