// What paint forbids: common practice, no source.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { breachesOf, type PaintStep, type PanelState, splitOf } from '../../../main/domain/paint/index.ts'
import {
  type PanelFinish,
  panelFinishes,
  panelNames,
  productKinds,
  stages,
} from '../../../main/domain/shop/index.ts'

const panel = (name: PanelState['panel'], part: Partial<PanelState> = {}): PanelState => ({
  panel: name,
  finish: 'gloss',
  thinUm: null,
  restsUntil: null,
  waxed: false,
  ...part,
})
const wash: PaintStep = { name: 'Wash', stage: 'prepare', productKind: 'wash' }
const polish: PaintStep = { name: 'Refine', stage: 'correct', productKind: 'polish' }
const wipe: PaintStep = { name: 'Wipe', stage: 'wipe', productKind: 'wipe' }
const coat: PaintStep = { name: 'Layer', stage: 'coat', productKind: 'coating' }
const rules = (steps: PaintStep[], panels: PanelState[]) =>
  breachesOf(steps, panels, 'metric').map(({ rule, step, panels: on, mayOverride }) => [
    rule,
    step,
    on.join(' '),
    mayOverride,
  ])

describe('the paint forbids', () => {
  it.each<PanelFinish>(['satin', 'matte', 'matte film'])(
    'machine polishing on %s, whatever the reason',
    finish => {
      expect(rules([wash, polish], [panel('Roof', { finish }), panel('Bonnet')])).toEqual([
        ['matte polished', 'Refine', 'Roof', false],
      ])
    },
  )

  it.each<PanelFinish>(['film', 'plastic'])('compound on %s', finish => {
    const compound: PaintStep = { name: 'Cut', stage: 'correct', productKind: 'compound' }
    expect(rules([compound, polish], [panel('Roof', { finish })])).toEqual([
      ['film or plastic compounded', 'Cut', 'Roof', false],
    ])
  })

  it('polishing a panel under the floor, until somebody gives a reason; nothing else of it', () => {
    const thin = panel('Bonnet', { thinUm: 71.6 })
    expect(breachesOf([wash, polish, coat], [thin, panel('Roof')], 'metric')).toEqual([
      expect.objectContaining({
        rule: 'thin paint polished',
        panels: ['Bonnet'],
        mayOverride: true,
        words: 'Bonnet (72 µm): under the floor; correction may go through the clear coat.',
      }),
    ])
    // 71.6 µm are 2.8 mils of 25.4 µm.
    expect(breachesOf([polish], [thin], 'us')[0]!.words).toMatch(/^Bonnet \(2\.8 mil\): under the floor/)
    expect(rules([wash, wipe, coat], [thin])).toEqual([])
    expect(rules([polish], [panel('Bonnet', { thinUm: 60, finish: 'matte' })])).toEqual([
      ['matte polished', 'Refine', 'Bonnet', false],
    ])
  })

  it('a coat over wax, unless it is wiped or polished off before', () => {
    const waxed = [panel('Roof', { waxed: true })]
    expect(rules([wash, coat], waxed)).toEqual([['coat over wax', 'Layer', 'Roof', true]])
    expect(rules([wash, wipe, coat], waxed)).toEqual([])
    expect(rules([wash, polish, coat], waxed)).toEqual([])
    expect(rules([wash, coat, wipe], waxed)).toEqual([['coat over wax', 'Layer', 'Roof', true]])
    expect(rules([wash], waxed)).toEqual([])
  })

  it('a coat over paint that still rests, and an abrasive polish over a coat', () => {
    expect(
      rules([wipe, coat], [panel('Left wing', { finish: 'respray', restsUntil: '2026-05-01' })]),
    ).toEqual([['coat over fresh paint', 'Layer', 'Left wing', true]])
    expect(rules([coat, { ...polish, stage: 'finish' }], [panel('Roof')])).toEqual([
      ['polish over a coat', 'Refine', 'Roof', false],
    ])
  })

  it('nothing of sound gloss in the right order; and the split never holds a panel that breaks a rule', () => {
    expect(
      rules(
        [wash, polish, wipe, coat],
        panelNames.map(name => panel(name)),
      ),
    ).toEqual([])
    const states = fc.array(
      fc.record({
        panel: fc.constantFrom(...panelNames),
        finish: fc.constantFrom(...panelFinishes),
        thinUm: fc.constantFrom(null, 60),
        restsUntil: fc.constantFrom(null, '2026-05-01'),
        waxed: fc.boolean(),
      }),
      { maxLength: 11 },
    )
    const steps = fc.array(
      fc.record({
        name: fc.constant('x'),
        stage: fc.constantFrom(...stages),
        productKind: fc.constantFrom(null, ...productKinds),
      }),
      { maxLength: 6 },
    )
    fc.assert(
      fc.property(
        steps,
        fc.uniqueArray(
          states.chain(s => fc.constantFrom(...(s.length ? s : [panel('Roof')]))),
          { selector: s => s.panel },
        ),
        (chain, panels) => {
          const { on, leaveOut } = splitOf(panels, breachesOf(chain, panels, 'metric'))
          expect([...on, ...leaveOut].sort()).toEqual(panels.map(each => each.panel).sort())
          const rest = panels.filter(each => on.includes(each.panel))
          expect(breachesOf(chain, rest, 'metric')).toEqual([])
        },
      ),
    )
  })
})
