import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { makePdf } from '../../../main/documents/kit/pdf.ts'
import { drawWords } from '../../../main/documents/kit/write.ts'
import { sheetTypeOf } from '../../../main/domain/hazard/index.ts'

const frame = {
  title: 'Sheet',
  author: 'Maker',
  at: 29_000_000,
  paper: [200, 200] as [number, number],
  margins: { top: 0, left: 0, bottom: 0, right: 0 },
}
const bytesOf = (text: string) => Uint8Array.from(text, char => char.charCodeAt(0))
const code = (bytes: Uint8Array) => {
  try {
    return sheetTypeOf(bytes, 'sheet')
  } catch (error) {
    return (error as { code: string }).code
  }
}

describe('a data sheet’s file', () => {
  it('is a PDF another program has written, whole; cut short anywhere it is broken (ISO 32000-1, 7.5.5)', async () => {
    const pdf = await makePdf(
      frame,
      doc => void drawWords(doc, 'Section 1', { font: 'regular', size: 9 }, { x: 20, y: 20, width: 200 }),
    )
    expect(code(pdf)).toBe('application/pdf')
    for (const share of [0.1, 0.5, 0.9]) expect(code(pdf.slice(0, pdf.length * share))).toBe('file-broken')
    // Something after the end is tolerated, as readers do.
    expect(code(Uint8Array.from([...pdf, 10, 10]))).toBe('application/pdf')
    const lost = bytesOf('%PDF-1.7\n1 0 obj\nendobj\nstartxref\n99999\n%%EOF\n')
    expect(code(lost)).toBe('file-broken')
    expect(code(bytesOf('%PDF-1.7\nnothing else'))).toBe('file-broken')
  })

  it('is a picture with its end (PNG 11.2.5; ITU-T T.81, table B.1)', () => {
    const png = new Uint8Array(readFileSync('assets/icon.png'))
    expect(code(png)).toBe('image/png')
    expect(code(png.slice(0, -40))).toBe('file-broken')
    expect(code(Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 0, 0xff, 0xd9))).toBe('image/jpeg')
    expect(code(Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 0))).toBe('file-broken')
  })

  it('is nothing else, not empty, and not over 15 MB', () => {
    expect(code(bytesOf('<html>'))).toBe('file-type')
    expect(code(new Uint8Array())).toBe('file-size')
    expect(code(new Uint8Array(15 * 1024 * 1024 + 1))).toBe('file-size')
  })
})
