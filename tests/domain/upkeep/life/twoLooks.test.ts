import fc from 'fast-check'
import { expect, test } from 'vitest'
import { foundOn, horizontalPanels, lookPanels, waterLooks } from '../../../../main/domain/upkeep/index.ts'
import { panelFound } from '../../../../main/domain/upkeep/life/twoLooks.ts'

// Dirt on a coating hides it; a decontamination wash brings back what was clogged: common practice, no source.
test('The second look tells clogged from gone; a single one tells only that it works', () => {
  const found = waterLooks.map(before => [null, ...waterLooks].map(after => panelFound({ before, after })))
  expect(found).toEqual([
    // not washed, strong, weak, none after
    ['working', 'working', 'weak', 'gone'],
    ['unknown', 'restored', 'weak', 'gone'],
    ['unknown', 'restored', 'clogged', 'gone'],
  ])
})

test('Flat panels decide and are told apart from the upright ones', () => {
  const worn = foundOn([
    { panel: 'roof', before: 'none', after: 'none' },
    { panel: 'bonnet', before: 'weak', after: 'none' },
    { panel: 'boot lid', before: 'none', after: 'strong' },
    { panel: 'left side', before: 'weak', after: 'strong' },
  ])
  expect(worn).toEqual({
    working: false,
    secondLook: true,
    words: 'flat: roof, bonnet gone; boot lid restored by the wash; upright: left side restored by the wash',
  })
  // A film before the wash, and tight beads after it: a single look would have called it gone.
  const clogged = { panel: 'roof', before: 'none' } as const
  expect(foundOn([{ ...clogged, after: null }])).toMatchObject({ working: false, secondLook: false })
  expect(foundOn([{ ...clogged, after: 'strong' }])).toMatchObject({ working: true, secondLook: true })
  // However many upright panels are the other way, the flat ones decide.
  const upright = (['front', 'left side', 'right side', 'rear'] as const).map(panel => ({
    panel,
    before: 'strong' as const,
  }))
  const roof = { panel: 'roof', before: 'weak' } as const
  const strong = upright.map(look => ({ ...look, after: 'strong' as const }))
  const gone = upright.map(look => ({ ...look, after: 'none' as const }))
  expect(foundOn([{ ...roof, after: 'none' }, ...strong]).working).toBe(false)
  expect(foundOn([{ ...roof, after: 'strong' }, ...gone]).working).toBe(true)
  // Sides outlast the roof, so no life is learned from them.
  expect(foundOn([{ panel: 'rear', before: 'weak', after: 'strong' }]).secondLook).toBe(false)
  expect(() => foundOn([])).toThrow(expect.objectContaining({ code: 'nothing-found' }))
  expect(() => foundOn([clogged, clogged].map(look => ({ ...look, after: null })))).toThrow(
    expect.objectContaining({ code: 'panel-twice' }),
  )
})

test('What the wash shows decides alone, and a worse second look never makes it work', () => {
  const water = fc.constantFrom(...waterLooks)
  const looks = fc
    .subarray([...lookPanels], { minLength: 1 })
    .chain(panels =>
      fc.tuple(...panels.map(panel => fc.record({ panel: fc.constant(panel), before: water, after: water }))),
    )
  fc.assert(
    fc.property(looks, water, (seen, other) => {
      const found = foundOn(seen)
      // Whatever was seen before the wash: the same verdict.
      expect(foundOn(seen.map(look => ({ ...look, before: other }))).working).toBe(found.working)
      const worse = foundOn(seen.map((look, i) => (i === 0 ? { ...look, after: 'none' as const } : look)))
      if (worse.working) expect(found.working).toBe(true)
      expect(found.secondLook).toBe(seen.some(look => horizontalPanels.some(each => each === look.panel)))
    }),
  )
})
