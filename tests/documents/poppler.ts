/** A PDF as poppler reads it: another reader than the one that draws it, or the one of the other tests. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

function ask(bytes: Uint8Array, command: string, ...options: string[]): string {
  const folder = mkdtempSync(join(tmpdir(), 'pdf-'))
  try {
    const file = join(folder, 'it.pdf')
    writeFileSync(file, bytes)
    const last = command === 'pdftotext' ? [file, '-'] : [file]
    const { stdout, stderr, status } = spawnSync(command, [...options, ...last], { encoding: 'utf8' })
    if (status !== 0 || stderr !== '') throw new Error(`${command}: ${status} ${stderr}`)
    return stdout
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** What stands on the pages, with runs of blanks and line ends as one blank; `\f` ends each page. */
export function pdfWords(bytes: Uint8Array): string {
  return ask(bytes, 'pdftotext', '-layout').replaceAll(/[^\S\f]+/g, ' ')
}

/** Each word as its letters stand from left to right, with where it begins from the left in points. */
export function pdfPlaces(bytes: Uint8Array): { word: string; x: number }[] {
  const found = ask(bytes, 'pdftotext', '-bbox').matchAll(/<word xMin="([\d.]+)"[^>]*>([^<]*)</g)
  return Array.from(found, ([, x, word]) => ({
    word: word!.replaceAll(/[\u200e\u200f\u202a-\u202e]/g, ''),
    x: Number(x),
  }))
}

/** What `pdfinfo` says: `Pages`, `Title`, `Tagged`, `Page size` ... */
export function pdfInfo(bytes: Uint8Array): Record<string, string> {
  const lines = ask(bytes, 'pdfinfo')
    .split('\n')
    .filter(line => line.includes(':'))
  return Object.fromEntries(
    lines.map(line => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1).trim()]),
  )
}

/** Each font of the file: whether it is inside, and whether its glyphs are known as letters. */
export function pdfFonts(bytes: Uint8Array): { name: string; embedded: boolean; unicode: boolean }[] {
  return ask(bytes, 'pdffonts')
    .split('\n')
    .slice(2)
    .filter(line => line.trim() !== '')
    .map(line => {
      const [embedded, , unicode] = line.trim().split(/\s+/).slice(-5)
      return { name: line.split(' ')[0]!, embedded: embedded === 'yes', unicode: unicode === 'yes' }
    })
}

/** The elements as a screen reader walks them, with their texts: `H1 "Invoice 7"`. */
export function pdfTags(bytes: Uint8Array): string {
  return ask(bytes, 'pdfinfo', '-struct-text')
    .replaceAll(/ \(block\)| \(inline\)/g, '')
    .replaceAll(/\s+/g, ' ')
}

/** How far a coat has cured as a share: an interpolation between the figures of a sheet, which no paper says as a fact. */
export const cureShare = /\d\s*%\s*(cured|of (the )?cure|hard)/i
