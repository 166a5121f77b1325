import { expect, test } from 'vitest'
import { WASTE_STREAMS, wasteNotes, wasteStreamsOf } from '../../../main/domain/hazard/waste.ts'

test('Laying a coating leaves solvent cloths and uncured residue, washing leaves water, each named once', () => {
  expect(wasteStreamsOf(['wash', 'coating', 'topper', 'decontaminant'])).toEqual([...WASTE_STREAMS])
  expect(wasteStreamsOf(['wipe'])).toEqual(['solventCloths'])
  expect(wasteStreamsOf(['consumable'])).toEqual([])
})

test('Cloths that may heat up by themselves go into a closed metal container', () => {
  // 29 CFR 1926.252(e): "All solvent waste, oily rags, and flammable liquids shall be kept in fire resistant covered
  // containers until removed from worksite." From memory.
  const { caution, source } = wasteNotes.solventCloths
  expect(caution).toMatch(/heat up by themselves.*closed metal container/)
  expect(source).toContain('29 CFR 1926.252(e)')
})

test('Every stream says where its caution comes from, and leaves the decision to the code, the carrier or the sheet', () => {
  for (const note of Object.values(wasteNotes)) {
    expect(note.source).toMatch(/common practice, no source|from memory/)
    expect(note.caution).toMatch(/local code|data sheet/)
  }
})
