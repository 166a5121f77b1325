import { normaliseCode } from './regime.ts'

/** Protective equipment a precautionary statement asks for. */
const asked: Readonly<Record<string, readonly string[]>> = {
  P280: ['gloves', 'protective clothing', 'eye protection', 'face protection'],
  P282: ['cold-insulating gloves', 'face shield or eye protection'],
  P283: ['fire-resistant clothing'],
  P284: ['respiratory protection'],
}

/**
 * The equipment named by precautionary codes, without doubles. P280 names four kinds of which the maker picks: which ones,
 * and of what material, section 8 of the data sheet says. Source: wording of P280 to P284, CLP annex IV.
 */
export function protectionNamed(codes: readonly string[]): string[] {
  return [
    ...new Set(
      codes.flatMap(code =>
        normaliseCode(code)
          .split('+')
          .flatMap(part => asked[part] ?? []),
      ),
    ),
  ]
}
