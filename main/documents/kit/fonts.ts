/** The fonts of every document, and which of them writes a letter. */
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Font, openSync } from 'fontkit'

export type FontName = 'regular' | 'bold' | 'han'

// Three folders up lies assets/; from the bundle of the desktop app, two.
const here = dirname(fileURLToPath(import.meta.url))
const root = here.endsWith(join('documents', 'kit')) ? join(here, '..', '..', '..') : join(here, '..', '..')

/**
 * DejaVu writes Latin, Greek, Cyrillic, Hebrew and Arabic; Noto Sans SC the Chinese characters in common use and the
 * Japanese syllables. Korean, Thai and the scripts of India are not carried: their letters print as empty boxes.
 */
const fontFile: Record<FontName, string> = {
  regular: 'DejaVuSansCondensed.ttf',
  bold: 'DejaVuSansCondensed-Bold.ttf',
  han: 'NotoSansSC-Regular.ttf',
}

export const fontPath = (name: FontName) => join(root, 'assets', 'fonts', fontFile[name])

const opened = new Map<FontName, Font>()

/** A font to measure with and to ask what it carries, read when it is first asked for: the third is large and seldom needed. */
export function openFont(name: FontName): Font {
  const known = opened.get(name)
  if (known) return known
  const font = openSync(fontPath(name)) as Font
  opened.set(name, font)
  return font
}

/** The font that writes this letter: the wanted one where it can, else the one that can, else the wanted one. */
export function fontFor(codePoint: number, wanted: FontName): FontName {
  if (codePoint < 0x250 || openFont(wanted).hasGlyphForCodePoint(codePoint)) return wanted
  return openFont('han').hasGlyphForCodePoint(codePoint) ? 'han' : wanted
}
