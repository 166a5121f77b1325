/** What a container holds, as lists write it: "500 ml", "16 fl oz", "1,5 l". */
import { convert } from '../measure/index.ts'

export const volumeUnits = ['ml', 'cl', 'dl', 'l', 'fl oz', 'gal', 'g', 'kg', 'oz', 'lb', 'piece'] as const
export type VolumeUnit = (typeof volumeUnits)[number]

const spellings: readonly (readonly [VolumeUnit, RegExp])[] = [
  ['fl oz', /\b(us )?(fl\.? ?oz|fluid ounces?)\.?/i],
  ['ml', /(?<!\p{L})(ml|millilit(er|re)s?|cc)\b/iu],
  ['cl', /(?<!\p{L})(cl|[cz]entilit(er|re)s?)\b/iu],
  ['dl', /(?<!\p{L})(dl|de[cz]ilit(er|re)s?)\b/iu],
  ['gal', /\b(us )?(gal|gallons?)\b/i],
  ['l', /(?<!\p{L})(l|lit(er|re)s?)\b/iu],
  ['kg', /(?<!\p{L})(kg|kilos?|kilogramm?s?)\b/iu],
  ['g', /(?<!\p{L})(g|gramm?s?|grammes?)\b/iu],
  ['lb', /\b(lbs?|pounds?)\b/i],
  ['piece', /(?<!\p{L})(pcs?|pieces?|st(ü|ue)ck|stk)(?!\p{L})/iu],
]

const ounce = /\b(oz|ounces?|unzen?)\b/i
const pint = /\b(pt|pints?|qt|quarts?)\b/i
const imperial = /\b(imp(erial)?|uk)\b/i

function spelledIn(text: string): VolumeUnit | null {
  // "500ml": a figure is no part of the word.
  const apart = text.replaceAll(/(\d)(\p{L})/gu, '$1 $2')
  return spellings.find(([, spelled]) => spelled.test(apart))?.[0] ?? null
}

/**
 * The unit a heading or a cell names; null where it names none. An ounce alone may be of volume or weight, and fluid
 * ounces and gallons differ between countries: none.
 */
export function unitNamed(text: string): VolumeUnit | null {
  const unit = spelledIn(text)
  return (unit === 'fl oz' || unit === 'gal') && imperial.test(text) ? null : unit
}

const figure = /\d[\d.,\u00a0' ]*/

/** The first figure of a cell, the words it is counted in (behind it, or else before it), and whether more figures follow. */
function firstFigure(cell: string): { digits: string; words: string; more: boolean } | null {
  const found = figure.exec(cell)
  if (!found) return null
  const behind = cell.slice(found.index + found[0].length)
  const own = behind.replace(/\d.*/s, '')
  const words = /\p{L}/u.test(own) ? own : cell.slice(0, found.index)
  return { digits: found[0], words, more: own !== behind }
}

/** The unit such words name, or else `usual`, which the list is in; null where nobody can tell. */
function unitOf({ words, more }: { words: string; more: boolean }, usual: VolumeUnit | null) {
  const unit = unitNamed(words)
  if (unit !== null) return unit
  if (more || pint.test(words) || spelledIn(words) !== null) return null
  return ounce.test(words) && usual !== 'fl oz' && usual !== 'oz' ? null : usual
}

/** Whether any of these says no unit itself. */
export function needsUnit(cells: readonly string[]): boolean {
  return cells.some(cell => {
    const first = firstFigure(cell)
    return first !== null && unitNamed(first.words) === null
  })
}

/**
 * What stands before a fraction in these figures: settled where one of them can be read in one way only, `ask` where
 * "1,250" may be a thousand or one and a quarter.
 */
export function needsMark(cells: readonly string[]): '.' | ',' | 'ask' {
  let unsure = false
  for (const cell of cells) {
    const digits = figure.exec(cell)?.[0].trim() ?? ''
    const marks = digits.replaceAll(/[^.,]/g, '')
    const last = marks.at(-1) as '.' | ',' | undefined
    if (last === undefined) continue
    // Both stand in it: the last one is the fraction's.
    if (marks.includes('.') && marks.includes(',')) return last
    // Twice the same parts thousands.
    if (marks.length > 1) return last === '.' ? ',' : '.'
    if (digits.length - digits.lastIndexOf(last) - 1 !== 3) return last
    unsure = true
  }
  return unsure ? 'ask' : '.'
}

export interface Content {
  /** In millilitres, grams or pieces. */
  readonly amount: number
  readonly unit: 'ml' | 'g' | 'piece'
}

/** What each is in, and how many of those one of it holds. Factors: NIST Special Publication 811, appendix B.8. */
const inBase: Readonly<Record<VolumeUnit, { unit: Content['unit']; each: number }>> = {
  ml: { unit: 'ml', each: 1 },
  cl: { unit: 'ml', each: 10 },
  dl: { unit: 'ml', each: 100 },
  l: { unit: 'ml', each: 1_000 },
  'fl oz': { unit: 'ml', each: convert(1, 'US fluid ounce', 'mL') },
  gal: { unit: 'ml', each: convert(1, 'US gallon', 'mL') },
  g: { unit: 'g', each: 1 },
  kg: { unit: 'g', each: 1_000 },
  oz: { unit: 'g', each: convert(1, 'ounce', 'g') },
  lb: { unit: 'g', each: convert(1, 'pound', 'g') },
  piece: { unit: 'piece', each: 1 },
}

/** The content a cell names, in its own unit or else in `usual`; null where it is none. */
export function readContent(
  cell: string,
  { mark, usual }: { mark: '.' | ','; usual: VolumeUnit | null },
): Content | null {
  const first = firstFigure(cell)
  const unit = first && unitOf(first, usual)
  if (!unit) return null
  const digits = first.digits.replaceAll(/[\u00a0' ]/g, '')
  const other = mark === '.' ? ',' : '.'
  const value = Number(digits.replaceAll(other, '').replace(mark, '.'))
  if (!(value > 0) || value > 1_000_000) return null
  const { unit: base, each } = inBase[unit]
  return { amount: Math.round(value * each * 100) / 100, unit: base }
}
