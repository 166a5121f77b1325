// How plates are typed and compared: common practice, no source. All plates here are invented.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { looseKey, plateKey, readPlate } from '../../../main/domain/vehicle/index.ts'

describe('a plate', () => {
  it('is one plate however it is typed', () => {
    const writings = ['ab12 cde', 'AB12CDE', ' ab-12–cde ', 'ＡＢ12 CDE']
    expect(new Set(writings.map(text => readPlate(text).key))).toEqual(new Set(['AB12CDE']))
    expect(readPlate(' b-xy  123 ').shown).toBe('B-XY 123')
    expect(readPlate('Ü·ab 42!').shown).toBe('Ü·AB 42')
  })

  it('keeps its key when it is read again from how it is shown', () => {
    const sign = fc.constantFrom(...'ABCXYZ019 -·.ÄÖ')
    fc.assert(
      fc.property(fc.string({ unit: sign, minLength: 1, maxLength: 12 }), text => {
        fc.pre(plateKey(text) !== '')
        const { shown, key } = readPlate(text)
        expect(readPlate(shown)).toEqual({ shown, key })
      }),
    )
  })

  it('that was misread is still found', () => {
    expect(looseKey('O1 IOU')).toBe(looseKey('01-1ou'))
    expect(looseKey('AB 12')).not.toBe(looseKey('AB 13'))
  })

  it('is refused when it holds nothing, or too much', () => {
    for (const text of ['', ' - ', '???', 'ABCDEFGHIJKLM'])
      expect(() => readPlate(text, 'vehicle.plate')).toThrow(
        expect.objectContaining({ code: 'plate-bad', field: 'vehicle.plate', value: text }),
      )
  })
})
