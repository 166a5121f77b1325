import { spawnSync } from 'node:child_process'
import QrCode from 'qrcode'
import { describe, expect, it } from 'vitest'
import { type BottleLabel, bottleLabelPdf } from '../../main/documents/bottleLabel.ts'
import { hazardStatement, labelFromCodes, precautionaryStatement } from '../../main/domain/hazard/index.ts'
import { readPdf } from './readPdf.ts'

const codes = ['H225', 'H319', 'H336']
const { pictograms, signalWord } = labelFromCodes(codes, 'eu-clp')
const label: BottleLabel = {
  productName: 'Ovrel Panel Wipe',
  shopName: 'Ashdown Paint Care',
  at: 29_604_000,
  originWords: 'decanted 15 April 2026 from no. 412, use by 3 July 2026',
  maker: 'Ovrel Surface Chemistry, +1 212-555-0143',
  signalWord,
  pictograms: [...pictograms],
  hazards: codes.map(code => hazardStatement(code)),
  precautions: ['P210', 'P233'].map(code => precautionaryStatement(code)),
  protection: ['nitrile gloves'],
  silences: ['The data sheet is silent on its transport number; ask the supplier, and do not guess.'],
  recordUrl: 'http://127.0.0.1:4410/shelf/lot/0199f2aa-7b31-7c55-9a10-0c5b2f5a1e77',
  onlyHere: false,
}
const wordsOf = async (change: Partial<BottleLabel> = {}) => {
  const { pages } = await readPdf(await bottleLabelPdf({ ...label, ...change }))
  return { pages, words: pages[0]!.lines.join(' ') }
}

describe('a decanted bottle’s label', () => {
  it('is at least 52 × 74 mm, on one page (CLP Annex I, table 1.3, from memory)', async () => {
    const { pages } = await wordsOf()
    expect(pages).toHaveLength(1)
    expect((pages[0]!.width / 72) * 25.4).toBeGreaterThanOrEqual(74)
    expect((pages[0]!.height / 72) * 25.4).toBeGreaterThanOrEqual(52)
  })

  it('carries name, signal word, every statement, equipment, what the sheet is silent on, and where it came from', async () => {
    const { words } = await wordsOf()
    for (const part of [
      label.productName,
      'DANGER',
      'nitrile gloves',
      'no. 412',
      label.maker,
      'The data sheet decides.',
    ])
      expect(words).toContain(part)
    // CLP Annex III: H225, H319, H336.
    expect(words).toContain('Highly flammable liquid and vapour.')
    expect(words).toContain('Causes serious eye irritation.')
    expect(words).toContain('May cause drowsiness or dizziness.')
    expect(words).toContain('silent on its transport number')
    // What the maker fills in is left open, with no full stop behind its dots (P302+P352).
    const open = await wordsOf({ precautions: [precautionaryStatement('P302+P352')] })
    expect(open.words).toContain('…')
    expect(open.words).not.toContain('….')
  })

  it('says where its code opens on one computer only', async () => {
    expect((await wordsOf()).words).not.toContain('own computer only')
    const { words } = await wordsOf({ onlyHere: true })
    expect(words).toContain('The code opens on the shop’s own computer only')
    // None of what stands at the foot is cut for it.
    for (const part of [label.maker, label.shopName, 'The data sheet decides.']) expect(words).toContain(part)
  })

  it('draws its pictograms in their red frames: two of them here (flame, exclamation mark)', async () => {
    expect(label.pictograms).toEqual(['GHS02', 'GHS07'])
    const red = (fills: string[]) => fills.filter(fill => /^#d6001c$/i.test(fill)).length
    expect(red((await wordsOf()).pages[0]!.fills)).toBe(2)
    expect(red((await wordsOf({ pictograms: [] })).pages[0]!.fills)).toBe(0)
  })

  it('says that more stands on the sheet where the sentences do not all fit, and keeps the hazards first', async () => {
    const many = Array.from({ length: 60 }, () => precautionaryStatement('P305+P351+P338'))
    const { words, pages } = await wordsOf({ precautions: many })
    expect(pages).toHaveLength(1)
    expect(words).toContain('… more on the data sheet.')
    expect(words).toContain('May cause drowsiness or dizziness.')
    expect(words).toContain('no. 412')
  })

  it('leads to its record by a QR code with modules a telephone can read from a print', async () => {
    const dark = await pixels(label)
    // The code is alone in the lower left corner: the box around its dark pixels, cut into modules, is the code.
    const inCorner = (x: number, y: number) => x < 22 * perMm && y > 40 * perMm && y < 61 * perMm
    const points = dark.filter(([x, y]) => inCorner(x, y))
    const [left, right] = [Math.min(...points.map(p => p[0])), Math.max(...points.map(p => p[0])) + 1]
    const [top, foot] = [Math.min(...points.map(p => p[1])), Math.max(...points.map(p => p[1])) + 1]
    const { modules } = QrCode.create(label.recordUrl, { errorCorrectionLevel: 'M' })
    const cell = (right - left) / modules.size
    expect((foot - top) / modules.size).toBeCloseTo(cell, 1)
    const on = new Set(points.map(([x, y]) => `${x} ${y}`))
    for (let row = 0; row < modules.size; row++)
      for (let column = 0; column < modules.size; column++) {
        const x = Math.floor(left + (column + 0.5) * cell)
        const y = Math.floor(top + (row + 0.5) * cell)
        expect(on.has(`${x} ${y}`), `module ${row}, ${column}`).toBe(Boolean(modules.get(row, column)))
      }
    // No module under 0.33 mm: what a 300 dpi printer and a telephone's camera manage (common practice, no source).
    expect(cell / perMm).toBeGreaterThanOrEqual(0.33)
  })
})

const dpi = 300
const perMm = dpi / 25.4

/** The dark pixels of a label as another program prints it. */
async function pixels(of: BottleLabel): Promise<[number, number][]> {
  const { stdout } = spawnSync('pdftoppm', ['-r', String(dpi), '-gray', '-'], {
    input: await bottleLabelPdf(of),
    maxBuffer: 64 * 1024 * 1024,
  })
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(stdout.subarray(0, 40).toString('latin1'))!
  const width = Number(head[1])
  const found: [number, number][] = []
  stdout.subarray(head[0].length).forEach((value, i) => {
    if (value < 128) found.push([i % width, Math.floor(i / width)])
  })
  return found
}
