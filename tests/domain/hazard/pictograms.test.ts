// Codes and names: UN GHS annex 1 / CLP annex V, from memory. The drawings are ours; here only their form is checked.
import PDFDocument from 'pdfkit'
import { describe, expect, it } from 'vitest'
import { pictogram, pictogramCodes } from '../../../main/domain/hazard/index.ts'

/** End and control points of absolute path data; arcs give their end point. */
function pointsOf(d: string): [number, number][] {
  return [...d.matchAll(/([MLCA])([^MLCAZ]*)/g)].flatMap(([, command, rest]) => {
    const numbers = rest!
      .trim()
      .split(/[\s,]+/)
      .map(Number)
    expect(numbers.every(Number.isFinite), d).toBe(true)
    const pairs: [number, number][] = []
    for (let i = command === 'A' ? 5 : 0; i + 1 < numbers.length; i += 2)
      pairs.push([numbers[i]!, numbers[i + 1]!])
    return pairs
  })
}

it('there are nine, coded GHS01 to GHS09', () => {
  expect(pictogramCodes).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9].map(n => `GHS0${n}`))
})

describe.each(pictogramCodes)('%s', code => {
  const { layers } = pictogram(code)

  it('is a black symbol within a red-framed square set on its point', () => {
    const [red, white, ...drawing] = layers
    expect(red).toEqual({ fill: '#d6001c', d: 'M50 0L100 50L50 100L0 50Z' })
    expect(white!.fill).toBe('#ffffff')
    const field = Math.max(...pointsOf(white!.d).map(([x, y]) => Math.abs(x - 50) + Math.abs(y - 50)))
    expect(field).toBe(43)
    expect(drawing.some(layer => layer.fill === '#000000')).toBe(true)
    for (const layer of drawing.filter(({ fill }) => fill === '#000000'))
      for (const [x, y] of pointsOf(layer.d))
        expect(Math.abs(x - 50) + Math.abs(y - 50), `${x} ${y}`).toBeLessThan(field)
  })

  it('is made of commands that screens and PDFs both draw', async () => {
    for (const { d } of layers) expect(d).toMatch(/^(?:[MLCA][\d .-]+|Z)+$/)
    const document = new PDFDocument({ compress: false })
    for (const { d, fill } of layers) document.path(d).fill(fill)
    document.end()
    const page = Buffer.concat(await document.toArray()).toString('latin1')
    // pdfkit writes each layer as one fill; an arc it could not read would leave NaN behind.
    expect(page.match(/\nf\n/g)).toHaveLength(layers.length)
    expect(page).not.toContain('NaN')
  })
})
