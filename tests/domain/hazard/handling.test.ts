import { expect, test } from 'vitest'
import { handlingNotes } from '../../../main/domain/hazard/index.ts'

const notes = (
  hazardCodes: string[] | null,
  storageGroup: Parameters<typeof handlingNotes>[0]['storageGroup'],
) => handlingNotes({ hazardCodes, storageGroup })
const about = (...given: Parameters<typeof notes>) => notes(...given).map(note => note.about)

test('a fluoride wants a face shield, a first-aid plan, and help without waiting for pain', () => {
  // CDC MMWR 64(32):874-877, 2015: weak solutions burn without pain at first.
  const [first] = notes(['H301', 'H314'], 'fluoride')
  expect(first).toMatchObject({ about: 'fluoride', source: expect.stringContaining('MMWR 64(32)') })
  expect(first?.words).toMatch(/Face shield.*first-aid plan.*without waiting for pain/)
  expect(about(['H314'], 'acid')).toEqual([])
})

test('a fallout remover is named by its own chemistry', () => {
  const [first] = notes(['H302', 'H317'], 'thioglycolate')
  expect(first?.words).toMatch(/Never on or beside an acid or a bleach/)
})

test('extraction stands before the mask, which is chosen by exposure and has a change schedule', () => {
  // 29 CFR 1910.134(a)(1): engineering controls first.
  for (const codes of [['H332'], ['H336'], ['H226']]) {
    const note = notes(codes, 'flammable').find(each => each.about === 'breathing')
    expect(note?.words.indexOf('extraction')).toBeLessThan(note?.words.indexOf('respirator') ?? -1)
    expect(note?.words).toMatch(/chosen by the exposure.*written schedule/)
  }
})

test('bonding is asked for where a liquid that readily burns is poured, and only there', () => {
  for (const code of ['H224', 'H225', 'h226']) expect(about([code], 'flammable')).toContain('pouring')
  for (const code of ['H227', 'H319', 'H222']) expect(about([code], 'general')).not.toContain('pouring')
})

test('nothing is made up where nobody has read the sheet', () => {
  expect(notes(null, null)).toEqual([])
})
