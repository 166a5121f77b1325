import type { FontName } from './fonts.ts'
import { linesOf, pitchOf, type Style } from './lines.ts'
import type { Pdf } from './pdf.ts'
import { drawLine, type Place } from './write.ts'

export interface WordsStyle {
  font?: FontName
  size?: number
  /** `#rrggbb` */
  colour?: string
  align?: Place['align']
  /** Points left free before it. */
  before?: number
  /** Points from the left edge of the text. */
  indent?: number
}

export const ink = '#111111'
export const quiet = '#555555'
const text: Style = { font: 'regular', size: 9.5 }

export class Sheet {
  readonly pdf: Pdf
  /** The shop's colour, for headings and rules. */
  readonly colour: string
  /** Where the next thing begins, in points from the top of the page. */
  y: number
  #root: PDFKit.PDFStructureElement

  constructor(pdf: Pdf, colour: string) {
    this.pdf = pdf
    this.colour = colour
    this.y = pdf.page.margins.top
    this.#root = pdf.struct('Document')
    pdf.addStructure(this.#root)
  }

  get left(): number {
    return this.pdf.page.margins.left
  }

  get width(): number {
    const { width, margins } = this.pdf.page
    return width - margins.left - margins.right
  }

  /** Where the text of a page ends. */
  get foot(): number {
    return this.pdf.page.height - this.pdf.page.margins.bottom
  }

  /** Points a page has for text. */
  get room(): number {
    return this.foot - this.pdf.page.margins.top
  }

  end(): void {
    this.#root.end()
  }

  gap(points: number): void {
    this.y += points
  }

  /** Goes on to the next page where so many points are no more free on this one. */
  need(points: number): void {
    if (this.y + Math.min(points, this.room) <= this.foot) return
    this.turnPage()
  }

  turnPage(): void {
    this.pdf.addPage()
    this.y = this.pdf.page.margins.top
  }

  /** Adds what `draw` draws as one tagged element. */
  tag(type: string, draw: () => void, options: object = {}): void {
    this.#root.add(this.pdf.struct(type, options, draw))
  }

  /** Adds an element with others inside it; `fill` adds them and everything is closed after. */
  nest(type: string, fill: (parent: PDFKit.PDFStructureElement) => void): void {
    const element = this.pdf.struct(type)
    this.#root.add(element)
    fill(element)
    element.end()
  }

  /** Draws what is read to nobody. */
  plain(draw: () => void): void {
    this.pdf.markContent('Artifact', { type: 'Layout' })
    draw()
    this.pdf.endMarkedContent()
  }

  title(words: string): void {
    this.#heading('H1', words, { font: 'bold', size: 19 }, 0, 4)
  }

  heading(words: string): void {
    this.#heading('H2', words, { font: 'bold', size: 11.5 }, 12, 3)
  }

  #heading(tag: string, words: string, style: Style, before: number, after: number): void {
    // A heading is no last line of a page: two lines of what it heads go with it.
    this.need(before + pitchOf(this.pdf, style) + 2 * pitchOf(this.pdf, text) + after)
    if (this.y > this.pdf.page.margins.top) this.gap(before)
    this.write(tag, words, { ...style, colour: this.colour })
    this.gap(after)
  }

  paragraph(words: string, style: WordsStyle = {}): void {
    this.write('P', words, style)
  }

  /** Lines with a dot before each. */
  list(items: readonly string[], style: WordsStyle = {}): void {
    if (items.length === 0) return
    this.nest('L', list => {
      for (const item of items) {
        const entry = this.pdf.struct('LI')
        list.add(entry)
        this.write('LBody', `•  ${item}`, { ...style, indent: (style.indent ?? 0) + 2 }, entry)
        entry.end()
      }
    })
  }

  /** A picture, which `alt` says in words; at the left edge unless `x` says where. */
  figure(
    alt: string,
    draw: (x: number, y: number) => void,
    size: { width: number; height: number },
    x = this.left,
  ): void {
    this.need(size.height)
    const { y } = this
    const bbox = [x, y, x + size.width, y + size.height]
    this.tag('Figure', () => draw(x, y), { alt, bbox, placement: 'Block' })
    this.y += size.height
  }

  /** A thin line over the whole width. */
  rule(colour = '#bbbbbb', thick = 0.5): void {
    const { pdf, left, width, y } = this
    this.plain(() =>
      pdf
        .moveTo(left, y)
        .lineTo(left + width, y)
        .lineWidth(thick)
        .strokeColor(colour)
        .stroke(),
    )
  }

  /** Words as one element, on as many pages as they take. */
  write(tag: string, words: string, given: WordsStyle, parent = this.#root): void {
    if (given.before) this.gap(given.before)
    const style: Style = { font: given.font ?? text.font, size: given.size ?? text.size }
    const indent = given.indent ?? 0
    const [x, width] = [this.left + indent, this.width - indent]
    const pitch = pitchOf(this.pdf, style)
    let lines = linesOf(this.pdf, words, style, width)
    const element = this.pdf.struct(tag)
    parent.add(element)
    while (lines.length > 0) {
      this.need(pitch)
      const now = lines.slice(0, Math.max(1, Math.floor((this.foot - this.y) / pitch)))
      lines = lines.slice(now.length)
      element.add(() => {
        this.pdf.fillColor(given.colour ?? ink)
        for (const line of now) {
          drawLine(this.pdf, line, style, { x, y: this.y, width, ...(given.align && { align: given.align }) })
          this.y += pitch
        }
      })
    }
    element.end()
  }
}
