import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type CarOver,
  checkPanels,
  laidOver,
  overWords,
  type PanelNoted,
  panelFinishes,
  panelNames,
  panelsOver,
  scopes,
  type TreatmentStep,
} from '../../../main/domain/shop/index.ts'

const products = new Map([
  ['polish', { kind: 'polish' as const }],
  ['coat', { kind: 'coating' as const, family: 'paint' as const, finishes: null }],
  ['film coat', { kind: 'coating' as const, family: 'paint' as const, finishes: ['film' as const] }],
  ['rim', { kind: 'coating' as const, family: 'wheels' as const }],
])
const step = (stage: TreatmentStep['stage'], productId: string | null = null) =>
  ({ stage, productId }) as TreatmentStep
const correction = { steps: [step('prepare'), step('correct', 'polish')] }
const coating = { steps: [step('wipe'), step('coat', 'coat')] }

const gloss: CarOver = { finish: 'gloss', panels: [], scope: 'whole', today: '2026-04-15' }
const noted = (panel: PanelNoted['panel'], finish: PanelNoted['finish'], since: string | null = null) => [
  { panel, finish, since },
]

describe('what a treatment is laid over', () => {
  test('all of a car that is alike, and of its part the share (common practice, no source)', () => {
    expect(laidOver(correction, products, gloss)).toEqual({ share: 1, leftOut: [] })
    expect(laidOver(correction, products, { ...gloss, scope: 'front' }).share).toBe(0.35)
    expect(laidOver(correction, products, { ...gloss, scope: 'top' }).share).toBe(0.24)
  })

  test('what a product may not touch is left out, by each product’s own permission', () => {
    const roof = { ...gloss, panels: noted('Roof', 'matte film') }
    expect(laidOver(correction, products, roof)).toEqual({ share: 0.88, leftOut: ['Roof (matte film)'] })
    expect(laidOver(coating, products, roof)).toEqual({ share: 1, leftOut: [] })
    const bumper = { ...gloss, panels: noted('Front bumper', 'plastic') }
    expect(laidOver(coating, products, bumper).leftOut).toEqual(['Front bumper (plastic)'])
    const onFilm = { steps: [step('coat', 'film coat')] }
    expect(laidOver(onFilm, products, { ...gloss, panels: noted('Bonnet', 'film') }).share).toBe(0.12)
    // Whatever it is done with, correction polishes.
    expect(laidOver({ steps: [step('correct')] }, products, { ...gloss, finish: 'satin' }).share).toBe(0)
  })

  test('a fresh respray and a new film rest first, and count from that day on', () => {
    const since = (finish: PanelNoted['finish'], day: string) =>
      laidOver(coating, products, { ...gloss, panels: noted('Bonnet', finish, day) }).leftOut
    expect(since('respray', '2026-03-17')).toEqual(['Bonnet (respray, rests until 2026-04-16)'])
    expect(since('respray', '2026-03-16')).toEqual([])
    expect(since('film', '2026-04-09')).toEqual(['Bonnet (film, rests until 2026-04-16)'])
    expect(since('film', '2026-04-08')).toEqual([])
  })

  test('wheels and a wash are whole, whatever part of the paint is asked for', () => {
    const front = { ...gloss, scope: 'front' as const }
    expect(laidOver({ steps: [step('coat', 'rim')] }, products, front).share).toBe(1)
    expect(laidOver({ steps: [step('prepare')] }, products, front).share).toBe(1)
  })

  test('a narrower scope or one more panel noted never makes it more', () => {
    const panels = fc.uniqueArray(fc.constantFrom(...panelNames)).chain(names =>
      fc.tuple(
        ...names.map(panel =>
          fc.record({
            panel: fc.constant(panel),
            finish: fc.constantFrom(...panelFinishes),
            since: fc.constant(null),
          }),
        ),
      ),
    )
    fc.assert(
      fc.property(
        panels,
        fc.constantFrom(...scopes),
        fc.constantFrom(correction, coating),
        (all, scope, sold) => {
          const share = (some: readonly PanelNoted[], part: (typeof scopes)[number]) =>
            laidOver(sold, products, { ...gloss, panels: some, scope: part }).share
          expect(share(all, scope)).toBeLessThanOrEqual(share(all, 'whole'))
          expect(share(all, scope)).toBeLessThanOrEqual(share(all.slice(1), scope))
          expect(share(all, 'whole')).toBeLessThanOrEqual(1)
        },
      ),
    )
  })
})

test('the desk is told the part and what is left out; nothing where it is all of the car', () => {
  expect(overWords('Two layers', 'whole', { share: 1, leftOut: [] })).toEqual([])
  expect(overWords('Two layers', 'front', { share: 0.28, leftOut: ['Left wing (film)'] })).toEqual([
    '"Two layers": front end, 28 % of the paint (common practice); washing and drying stay whole, in time and price. It leaves out Left wing (film).',
  ])
  const wheels = { share: 1, alwaysWhole: true, leftOut: [] } as const
  expect(overWords('Wheels', 'whole', wheels)).toEqual([])
  expect(overWords('Wheels', 'front', wheels)).toEqual([
    '"Wheels" is done whole: no part of the paint makes it less.',
  ])
})

test('a panel noted twice and a respray without its day are refused by their field', () => {
  expect(() => checkPanels([...noted('Roof', 'film'), ...noted('Roof', 'satin')], 'panels')).toThrow(
    expect.objectContaining({ field: 'panels.1.panel' }),
  )
  expect(() => checkPanels(noted('Roof', 'respray'), 'panels')).toThrow(
    expect.objectContaining({ field: 'panels.0.since' }),
  )
})

test('the panels of a scope are read again from what was said to be left out', () => {
  const said = laidOver({ steps: [step('correct')] }, products, {
    ...gloss,
    scope: 'front',
    panels: [
      { panel: 'Bonnet', finish: 'respray', since: gloss.today },
      { panel: 'Left wing', finish: 'film', since: null },
    ],
  })
  expect(panelsOver('front', said.leftOut.join(', '))).toEqual(['Front bumper', 'Right wing'])
  expect(panelsOver('top', '')).toEqual(['Bonnet', 'Roof'])
})
