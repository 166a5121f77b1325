/**
 * Words laid into lines of a width: broken where Unicode allows (UAX 14), in the order they are read (UAX 9), each
 * letter in a font that has it. pdfkit's own text does neither mixed fonts nor right-to-left.
 */
import bidiFactory from 'bidi-js'
import LineBreaker from 'linebreak'
import { type FontName, fontFor } from './fonts.ts'
import { openPdfFont, type Pdf } from './pdf.ts'

export interface Style {
  font: FontName
  /** Points. */
  size: number
}

export interface Piece {
  font: FontName
  words: string
  /** Points. */
  width: number
}

export interface Line {
  /** What it says, in the order it is spoken. */
  words: string
  /** As they stand from left to right. */
  pieces: Piece[]
  width: number
  /** What it says goes on in the next line. */
  goesOn: boolean
}

const bidi = bidiFactory()
/** Hebrew, Arabic and their like, with the marks that turn the direction. */
const turning = /[\u0590-\u08ff\u200f\u202a-\u202e\u2066-\u2069\ufb1d-\ufdff\ufe70-\ufefc]/u
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
const unprintable = /[\u0000-\u0008\u000b-\u001f\u007f\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu

/** The lines `words` make in this width, which every line keeps: a word wider than it is broken. */
export function linesOf(pdf: Pdf, words: string, style: Style, width: number): Line[] {
  return words
    .replaceAll('\r\n', '\n')
    .replaceAll('\t', ' ')
    .split('\n')
    .flatMap(paragraph => broken(pdf, paragraph.replaceAll(unprintable, ''), style, width))
    .map((line, i, all) => ({ ...line, goesOn: i < all.length - 1 }))
}

/** Points from one line to the next. */
export function pitchOf(pdf: Pdf, style: Style): number {
  openPdfFont(pdf, style.font).fontSize(style.size)
  return pdf.currentLineHeight(true) * 1.08
}

function broken(pdf: Pdf, paragraph: string, style: Style, width: number): Omit<Line, 'goesOn'>[] {
  const lines: string[] = []
  let line = ''
  let filled = 0
  const begin = () => {
    if (line !== '') lines.push(line.trimEnd())
    line = ''
    filled = 0
  }
  for (const part of partsOf(paragraph)) {
    const bare = measure(pdf, part.trimEnd(), style)
    if (filled + bare > width && line !== '') begin()
    if (bare > width) {
      // One word wider than the line, an address of the web say: it goes on below, between two letters.
      for (const letter of lettersOf(part)) {
        const one = measure(pdf, letter, style)
        if (filled + one > width) begin()
        line += letter
        filled += one
      }
    } else {
      line += part
      filled += measure(pdf, part, style)
    }
  }
  if (line !== '' || lines.length === 0) lines.push(line.trimEnd())
  const direction = directionOf(paragraph)
  return lines.map(each => laid(pdf, each, style, direction))
}

type Direction = 'ltr' | 'rtl'

/**
 * Which way a paragraph reads, and so each of its lines: as its first letter does (UAX 9, P2). One that begins with a
 * name from the right and goes on from the left reads from the left, as all around it does.
 */
function directionOf(paragraph: string): Direction {
  const letters = paragraph.match(/\p{L}/gu) ?? []
  const fromRight = letters.filter(letter => turning.test(letter)).length
  return letters.length > 0 && turning.test(letters[0]!) && fromRight * 2 > letters.length ? 'rtl' : 'ltr'
}

/** The text cut where a line may end; each part keeps its blank. */
function partsOf(paragraph: string): string[] {
  const breaker = new LineBreaker(paragraph)
  const parts: string[] = []
  let from = 0
  for (let next = breaker.nextBreak(); next; next = breaker.nextBreak()) {
    parts.push(paragraph.slice(from, next.position))
    from = next.position
  }
  return parts
}

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' })
const lettersOf = (words: string) => Array.from(segmenter.segment(words), each => each.segment)

function measure(pdf: Pdf, words: string, style: Style): number {
  return inFonts(words, style.font).reduce(
    (sum, piece) => sum + widthOf(pdf, piece.words, piece.font, style.size),
    0,
  )
}

function widthOf(pdf: Pdf, words: string, font: FontName, size: number): number {
  return words === '' ? 0 : openPdfFont(pdf, font).fontSize(size).widthOfString(words)
}

/** The text in runs of one font; a mark stays with its letter. */
function inFonts(words: string, wanted: FontName): { font: FontName; words: string }[] {
  const runs: { font: FontName; words: string }[] = []
  for (const letter of words) {
    const last = runs.at(-1)
    const font =
      last && (letter === ' ' || /\p{M}/u.test(letter)) ? last.font : fontFor(letter.codePointAt(0)!, wanted)
    if (last?.font === font) last.words += letter
    else runs.push({ font, words: letter })
  }
  return runs
}

function laid(pdf: Pdf, words: string, style: Style, direction: Direction): Omit<Line, 'goesOn'> {
  const pieces = (turning.test(words) ? inOrder(words, direction) : [words])
    .flatMap(part => inFonts(part, style.font))
    .map(piece => ({ ...piece, width: widthOf(pdf, piece.words, piece.font, style.size) }))
  return { words, pieces, width: pieces.reduce((sum, piece) => sum + piece.width, 0) }
}

/**
 * The parts of a line as they stand from left to right. Within a part of one direction the font turns the letters
 * itself, word by word: so a part that reads from the right is cut at its blanks.
 */
function inOrder(words: string, direction: Direction): string[] {
  const levels = bidi.getEmbeddingLevels(words, direction)
  const order = bidi.getReorderedIndices(words, levels)
  const parts: { level: number; indices: number[]; blank: boolean }[] = []
  for (const index of order) {
    const level = levels.levels[index]!
    const blank = words[index] === ' '
    const last = parts.at(-1)
    if (last && last.level === level && last.blank === blank) last.indices.push(index)
    else parts.push({ level, indices: [index], blank })
  }
  return parts.map(({ level, indices }) => {
    const letters = level % 2 === 1 ? [...indices].reverse() : indices
    return letters
      .map(i => (level % 2 === 1 ? (bidi.getMirroredCharacter(words[i]!) ?? words[i]!) : words[i]!))
      .join('')
  })
}
