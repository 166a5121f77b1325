import { say } from '../../main/domain/language/index.ts'
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
  const plain = text.trim().replace(',', '.').replace('−', '-')
  if (!/^-?\d{1,9}(\.\d{1,9})?$/.test(plain)) return undefined
  const value = Number(plain)
  return value < least || value > most || (whole && !Number.isInteger(value)) ? undefined : value
}

/** What to write instead. */
export function numberRemedy({ least = 0, most = 1_000_000, whole }: NumberLimits): string {
  const plain = (value: number) => value.toLocaleString('en-GB')
  return say('Write a {whole} from {least} to {most}.', {
    whole: whole ? say('whole number') : say('number'),
    least: plain(least),
    most: plain(most),
  })
}
