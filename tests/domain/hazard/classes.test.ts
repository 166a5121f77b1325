// Wording: CLP annexes III and IV, read in a public transcription; UN and OSHA spellings from memory.
import { expect, it } from 'vitest'
import { hazardNamed } from '../../../main/domain/hazard/index.ts'

it('a hazard class is named in words, in either spelling, and refused otherwise', () => {
  expect(hazardNamed('Oxidizing liquid 2').code).toBe('H272')
  expect(hazardNamed('germ cell mutagenicity 1B').code).toBe('H340')
  expect(hazardNamed('gas under pressure').code).toBe('H280')
  expect(() => hazardNamed('flammable liquid 9')).toThrow(
    expect.objectContaining({ code: 'hazard-class-unknown', value: 'flammable liquid 9' }),
  )
})
