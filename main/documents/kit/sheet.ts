import type { FontName } from './fonts.ts'
import { linesOf, pitchOf, type Style } from './lines.ts'
import type { Pdf } from './pdf.ts'
import { drawLine, drawWords, type Place } from './write.ts'

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
  /** Points the lines may take; what is left of the sheet's width unless said. */
  width?: number
}

export const ink = '#111111'
export const quiet = '#555555'
const text: Style = { font: 'regular', size: 9.5 }

interface HeadingStyle extends Style {
  /** Points left free before and after it. */
  before: number
  after: number
}

const title: HeadingStyle = { font: 'bold', size: 19, before: 0, after: 4 }
const heading: HeadingStyle = { font: 'bold', size: 11.5, before: 12, after: 3 }

export class Sheet {
  readonly pdf: Pdf
  /** The shop's colour, for headings and rules. */
  readonly colour: string
  /** Where the next thing begins, in points from the top of the page. */
  y: number
  #root: PDFKit.PDFStructureElement
  /** A heading that waits for the first of what it heads, so that it never stands alone at the foot of a page. */
  #waiting: string | null = null

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
    this.need(0)
    this.#root.end()
  }

  gap(points: number): void {
    this.y += points
  }

  /** Goes on to the next page where so many points, and a heading that waits, are no more free on this one. */
  need(points: number): void {
    const words = this.#waiting
    this.#waiting = null
    const tall = words === null ? 0 : this.#headingTall(words, heading)
    if (this.y + Math.min(tall + points, this.room) > this.foot) this.turnPage()
    if (words !== null) this.#writeHeading('H2', words, heading)
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
    this.need(this.#headingTall(words, title) + 2 * pitchOf(this.pdf, text))
    this.#writeHeading('H1', words, title)
  }

  /** Drawn with the first of what follows it, on the page that has room for both. */
  heading(words: string): void {
    this.need(0)
    this.#waiting = words
  }

  #headingTall(words: string, { before, after, ...style }: HeadingStyle): number {
    return before + linesOf(this.pdf, words, style, this.width).length * pitchOf(this.pdf, style) + after
  }

  #writeHeading(tag: string, words: string, { before, after, ...style }: HeadingStyle): void {
    if (this.y > this.pdf.page.margins.top) this.gap(before)
    this.write(tag, words, { ...style, colour: this.colour })
    this.gap(after)
  }

  paragraph(words: string, style: WordsStyle = {}): void {
    this.write('P', words, style)
  }

  /** Lines with a dot before each; what does not fit beside it goes on under its own beginning. */
  list(items: readonly string[], style: WordsStyle = {}): void {
    if (items.length === 0) return
    const { font = text.font, size = text.size, colour = ink, indent = 0 } = style
    const dot = { font, size }
    this.need(2 * pitchOf(this.pdf, dot))
    this.nest('L', list => {
      for (const item of items) {
        const entry = this.pdf.struct('LI')
        list.add(entry)
        this.need(pitchOf(this.pdf, dot))
        const place = { x: this.left + indent + 2, y: this.y, width: size, goesOn: true }
        entry.add(
          this.pdf.struct('Lbl', {}, () => {
            this.pdf.fillColor(colour)
            drawWords(this.pdf, '•', dot, place)
          }),
        )
        this.write('LBody', item, { ...style, indent: indent + 2 + size }, entry)
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
    const style: Style = { font: given.font ?? text.font, size: given.size ?? text.size }
    const indent = given.indent ?? 0
    const [x, width] = [this.left + indent, given.width ?? this.width - indent]
    const pitch = pitchOf(this.pdf, style)
    let lines = linesOf(this.pdf, words, style, width)
    const before = given.before ?? 0
    // A paragraph begins with two of its lines, where it has two.
    this.need(before + Math.min(2, lines.length) * pitch)
    this.gap(before)
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
