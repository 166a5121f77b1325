/** What a container holds, as lists write it: "500 ml", "16 fl oz", "1,5 l". */
import { convert, type Unit } from '../measure/index.ts'

export const volumeUnits = ['ml', 'l', 'fl oz', 'gal', 'g', 'kg', 'piece'] as const
export type VolumeUnit = (typeof volumeUnits)[number]

const spellings: readonly (readonly [VolumeUnit, RegExp])[] = [
  ['fl oz', /\b(us )?(fl\.? ?oz|fluid ounces?)\.?/i],
  ['ml', /(?<!\p{L})(ml|millilit(er|re)s?|cc)\b/iu],
  ['gal', /\b(us )?(gal|gallons?)\b/i],
  ['l', /(?<!\p{L})(l|lit(er|re)s?)\b/iu],
  ['kg', /(?<!\p{L})(kg|kilos?|kilogramm?s?)\b/iu],
  ['g', /(?<!\p{L})(g|gramm?s?|grammes?)\b/iu],
  ['piece', /(?<!\p{L})(pcs?|pieces?|st(ü|ue)ck|stk)(?!\p{L})/iu],
]

/** The unit a heading or a cell names; null where it names none. An ounce alone may be of volume or weight: none. */
export function unitNamed(text: string): VolumeUnit | null {
  // "500ml": a figure is no part of the word.
  const apart = text.replaceAll(/(\d)(\p{L})/gu, '$1 $2')
  return spellings.find(([, spelled]) => spelled.test(apart))?.[0] ?? null
}

const figure = /\d[\d.,\u00a0' ]*/

/** Whether any of these says no unit itself. */
export function needsUnit(cells: readonly string[]): boolean {
  return cells.some(cell => unitNamed(cell) === null && figure.test(cell))
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

const inBase: Readonly<Record<VolumeUnit, { unit: Content['unit']; from?: Unit; to?: Unit }>> = {
  ml: { unit: 'ml' },
  l: { unit: 'ml', from: 'L', to: 'mL' },
  'fl oz': { unit: 'ml', from: 'US fluid ounce', to: 'mL' },
  gal: { unit: 'ml', from: 'US gallon', to: 'mL' },
  g: { unit: 'g' },
  kg: { unit: 'g', from: 'kg', to: 'g' },
  piece: { unit: 'piece' },
}

/** The content a cell names, in its own unit or else in `usual`; null where it is none. */
export function readContent(
  cell: string,
  { mark, usual }: { mark: '.' | ','; usual: VolumeUnit | null },
): Content | null {
  const unit = unitNamed(cell) ?? usual
  const digits = figure.exec(cell)?.[0].replaceAll(/[\u00a0' ]/g, '')
  if (unit === null || digits === undefined) return null
  const other = mark === '.' ? ',' : '.'
  const value = Number(digits.replaceAll(other, '').replace(mark, '.'))
  if (!(value > 0) || value > 1_000_000) return null
  const { unit: base, from, to } = inBase[unit]
  const amount = from && to ? convert(value, from, to) : value
  return { amount: Math.round(amount * 100) / 100, unit: base }
}
