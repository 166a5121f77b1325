/** The fonts of every document, and which of them writes a letter. */
import { join } from 'node:path'
import type { Font } from 'fontkit'
import { assetsFolder } from './assets.ts'

export type FontName = 'regular' | 'bold' | 'han' | 'hangul'

/**
 * DejaVu writes Latin, Greek, Cyrillic, Hebrew and Arabic; Noto Sans SC the Chinese characters in common use and the
 * Japanese syllables, Noto Sans KR the Korean ones. Thai and the scripts of India are not carried: their letters print as
 * empty boxes, which the screens say before (`unprintedIn`).
 */
const fontFile: Record<FontName, string> = {
  regular: 'DejaVuSansCondensed.ttf',
  bold: 'DejaVuSansCondensed-Bold.ttf',
  han: 'NotoSansSC-Regular.ttf',
  hangul: 'NotoSansKR-Regular.ttf',
}

export const fontPath = (name: FontName) => join(assetsFolder, 'fonts', fontFile[name])

const opened = new Map<FontName, Font>()
let opener: typeof import('fontkit') | undefined

/** Loads what opens fonts: 20 MB, which an app that draws nothing goes without. Wanted before the first is opened. */
export async function readyFonts(): Promise<void> {
  opener ??= await import('fontkit')
}

/** A font to measure with and to ask what it carries, read when it is first asked for: the last two are seldom needed. */
export function openFont(name: FontName): Font {
  const known = opened.get(name)
  if (known) return known
  if (!opener) throw new Error('readyFonts comes before the first font')
  const font = opener.openSync(fontPath(name)) as Font
  opened.set(name, font)
  return font
}

const korean = (codePoint: number) =>
  (codePoint >= 0xac00 && codePoint <= 0xd7a3) || (codePoint >= 0x3131 && codePoint <= 0x318e)

/** The font that writes this letter: the wanted one where it can, else the one that can, else the wanted one. */
export function fontFor(codePoint: number, wanted: FontName): FontName {
  if (codePoint < 0x250 || openFont(wanted).hasGlyphForCodePoint(codePoint)) return wanted
  const other = korean(codePoint) ? 'hangul' : 'han'
  return openFont(other).hasGlyphForCodePoint(codePoint) ? other : wanted
}
