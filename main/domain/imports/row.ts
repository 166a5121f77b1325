/** One row of a list while it is read: its cells by field, and what is wrong with them. */
import { say } from '../language/index.ts'
import { Refusal } from '../refusal.ts'
import { asWritten } from '../tables/index.ts'
import type { Reading } from './reading.ts'

export interface Problem {
  readonly field: string
  /** What stands there. */
  readonly value: string
  /** What to do about it, in a sentence. */
  readonly fix: string
}

export type RowFound<T> =
  | { readonly state: 'new'; readonly values: T; readonly notes: readonly string[] }
  /** It is here already, and is left as it is. */
  | { readonly state: 'known'; readonly why: string }
  | { readonly state: 'bad'; readonly problems: readonly Problem[] }

/** A cell longer than any field of ours. */
const longest = 4_000

/** What the shop knows that a row is read by. */
export interface RowRules {
  readonly reading: Reading
  /** A phone number as it is stored; refuses what is none. Read once for each text: it is what takes longest. */
  readonly phone: (text: string) => string
  /** The day it is, and the last model year there may be. */
  readonly today: string
  /** A new id for what is added. */
  newId(): string
}

export class RowReader {
  readonly problems: Problem[] = []
  readonly #cells: readonly string[]
  readonly #columns: Reading['columns']

  constructor(cells: readonly string[], { columns }: Reading) {
    this.#cells = cells
    this.#columns = columns
  }

  /** What stands in the column of a field, without the sign that keeps a spreadsheet from running it. */
  text(field: string): string {
    const column = this.#columns[field]
    const cell = column === null || column === undefined ? '' : (this.#cells[column] ?? '')
    return asWritten(cell).trim()
  }

  wrong(field: string, fix: string, value = this.text(field)): void {
    this.problems.push({ field, value: value.slice(0, 200), fix })
  }

  /** The value of a field as `read` has it; what it refuses is noted, and `otherwise` stands for it and for an empty one. */
  read<T>(field: string, read: (text: string) => T, otherwise: T): T {
    const text = this.text(field)
    if (text === '') return otherwise
    if (text.length > longest) {
      this.wrong(
        field,
        say('This has {text} characters; shorten it to {longest} or fewer.', { text: text.length, longest }),
      )
      return otherwise
    }
    try {
      return read(text)
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      this.wrong(field, error.message)
      return otherwise
    }
  }

  /** The same for one of a few words; `usual` where the cell is empty. */
  word<T extends string>(
    field: string,
    read: (text: string) => T | null,
    usual: T,
    words: readonly T[],
    shown: (word: T) => string = say,
  ): T {
    const text = this.text(field)
    const found = text === '' ? usual : read(text)
    if (found === null)
      this.wrong(field, say('Write one of {join}, or leave it empty.', { join: words.map(shown).join(', ') }))
    return found ?? usual
  }
}
