import { decimalMark, localeNow, say } from '../../main/domain/language/index.ts'
/** What a number field takes. */
export interface NumberLimits {
  /** The smallest number taken; 0 where nothing is said. */
  least?: number | undefined
  /** The greatest number taken; a million where nothing is said, as at the api. */
  most?: number | undefined
  /** Only whole numbers. */
  whole?: boolean | undefined
}

/**
 * A number as somebody types it, with a point or a comma before its decimals; undefined for anything else, for what lies
 * outside the limits, and for the long and the exponential forms a scanner or a spreadsheet leaves behind.
 */
export function readNumber(
  text: string,
  { least = 0, most = 1_000_000, whole }: NumberLimits,
): number | undefined {
  const typed = text.trim().replace('−', '-')
  // Where a comma stands before the decimals, 1.500 is one and a half thousand.
  const grouped = decimalMark() === ',' && /^-?\d{1,3}(\.\d{3})+(,\d+)?$/.test(typed)
  const plain = (grouped ? typed.replaceAll('.', '') : typed).replace(',', '.')
  if (!/^-?\d{1,9}(\.\d{1,9})?$/.test(plain)) return undefined
  const value = Number(plain)
  return value < least || value > most || (whole && !Number.isInteger(value)) ? undefined : value
}

/** What to write instead. */
export function numberRemedy({ least = 0, most = 1_000_000, whole }: NumberLimits): string {
  const plain = (value: number) => value.toLocaleString(localeNow())
  const limits = { least: plain(least), most: plain(most) }
  return whole
    ? say('Write a whole number from {least} to {most}.', limits)
    : say('Write a number from {least} to {most}.', limits)
}
