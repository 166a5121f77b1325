import type { Logo } from './logo.ts'
import type { Paper, PdfFrame } from './pdf.ts'

/** Who hands the sheet out. */
export interface Issuer {
  name: string
  /** Its address and how it is reached, line by line. */
  lines: readonly string[]
  /** Null: the name stands in its place. */
  logo: Logo | null
  /** `#rrggbb`, dark enough to be read on white. */
  colour: string
}

export type Fact = readonly [name: string, words: string]

/** What every sheet has around its text. */
export interface SheetFrame {
  title: string
  /** Epoch minute it is made. */
  at: number
  paper: Paper
  issuer: Issuer
  /** In the foot of every page, after the issuer: `invoice 2026-0041`. */
  reference: string
  /** At the right under the head: number, day, when it is due. */
  facts?: readonly Fact[]
  /** Whom it goes to, line by line. */
  to?: readonly string[]
  /** BCP 47; English unless said. */
  language?: string
  subset?: PdfFrame['subset']
  keywords?: PdfFrame['keywords']
}
