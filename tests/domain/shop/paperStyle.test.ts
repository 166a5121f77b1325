import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkPaperColour, readLogo } from '../../../main/domain/shop/index.ts'

const code = (ask: () => unknown) => {
  try {
    ask()
    return null
  } catch (error) {
    return (error as { code: string }).code
  }
}

describe('a colour on paper', () => {
  // WCAG 2.1, contrast ratio: with white, #767676 has 4.54 and #777777 4.48; small text wants 4.5 (W3C, G18, from memory).
  it('is kept in small letters, and refused where it is none or too pale to read', () => {
    expect(checkPaperColour(' #31456B ')).toBe('#31456b')
    for (const bad of ['', 'red', '#fff', '#12345g', '31456b'])
      expect(code(() => checkPaperColour(bad))).toBe('colour-bad')
    expect(code(() => checkPaperColour('#777777'))).toBe('colour-pale')
    expect(code(() => checkPaperColour('#767676'))).toBe(null)
  })
})

describe('a logo', () => {
  const png = new Uint8Array(readFileSync('assets/icon.png'))

  it('says its kind and size', () => {
    const head = readLogo(png)
    expect(head.type).toBe('image/png')
    expect(head.width).toBe(head.height)
  })

  it('is a JPEG of the size in its frame header (ITU-T T.81, B.2.2)', () => {
    const jpeg = (parts: number) =>
      Uint8Array.from([
        0xff,
        0xd8,
        0xff,
        0xe0,
        0,
        4,
        0,
        0,
        0xff,
        0xc0,
        0,
        11,
        8,
        0,
        120,
        1,
        44,
        parts,
        0,
        0,
        0,
        0xff,
        0xd9,
      ])
    expect(readLogo(jpeg(3))).toEqual({ type: 'image/jpeg', width: 300, height: 120, unpacked: null })
    expect(code(() => readLogo(jpeg(4)))).toBe('logo-form')
  })

  it('is refused where it is no picture, cut short, too large in bytes or pixels, or in a rare form', () => {
    expect(code(() => readLogo(new TextEncoder().encode('<svg/>')))).toBe('logo-type')
    expect(code(() => readLogo(png.slice(0, 500)))).toBe('logo-broken')
    expect(code(() => readLogo(new Uint8Array(2 * 1024 * 1024)))).toBe('logo-size')
    const changedAt = (at: number, value: number) => {
      const changed = png.slice()
      changed[at] = value
      return changed
    }
    expect(code(() => readLogo(changedAt(28, 1)))).toBe('logo-form')
    expect(code(() => readLogo(changedAt(24, 16)))).toBe('logo-form')
    expect(code(() => readLogo(changedAt(16, 9)))).toBe('logo-size')
    expect(code(() => readLogo(changedAt(25, 5)))).toBe('logo-broken')
  })

  it('never throws anything but a refusal, whatever the bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), fc.constantFrom(0, 1, 2), (tail, kind) => {
        const heads = [[], [0xff, 0xd8, 0xff], [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]]
        const given = code(() => readLogo(Uint8Array.from([...heads[kind]!, ...tail])))
        expect(given === null || given.startsWith('logo-')).toBe(true)
      }),
    )
  })
})
