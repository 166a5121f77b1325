/** How a file is read: which column holds what, and how days and amounts are written in it. */
import { foldText } from '../vehicle/index.ts'
import { type DayOrder, ordersFitting } from './days.ts'
import { type ImportKind, importFields } from './fields.ts'
import { germanColumns } from './germanColumns.ts'
import { needsMark, needsUnit, unitNamed, type VolumeUnit } from './volumes.ts'

export interface Reading {
  /** The column of each field, by its place in the file; null: the file has none. */
  readonly columns: Readonly<Record<string, number | null>>
  /** Null: not known yet, or no day is read. */
  readonly dayOrder: DayOrder | null
  /** What stands before the fraction of an amount; null: not known yet, or no amount is read. */
  readonly mark: '.' | ',' | null
  /** What amounts without a unit are in; null: not known yet, or each says it. */
  readonly volume: VolumeUnit | null
}

/** What only a person can say of this file. */
export type Question = 'dayOrder' | 'mark' | 'volume'

const plain = (text: string) =>
  foldText(text)
    .replaceAll(/\([^)]*\)/g, ' ')
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)
    .join(' ')
    .replaceAll(/\be mail\b/g, 'email')

/** The column each field is most likely in, each taken once: a whole name first, then one that ends in it. */
export function guessColumns(kind: ImportKind, names: readonly string[]): Record<string, number | null> {
  const folded = names.map(plain)
  const taken = new Set<number>()
  const found: Record<string, number | null> = Object.fromEntries(
    importFields[kind].map(({ field }) => [field, null]),
  )
  const take = (fits: (column: string, name: string) => boolean) => {
    for (const { field, names: known } of importFields[kind]) {
      if (found[field] !== null) continue
      const at = [...known, ...(germanColumns[kind][field] ?? [])]
        .map(name => folded.findIndex((column, i) => !taken.has(i) && fits(column, name)))
        .find(place => place >= 0)
      if (at === undefined) continue
      found[field] = at
      taken.add(at)
    }
  }
  take((column, name) => column === name)
  take((column, name) => column.endsWith(` ${name}`))
  return found
}

/** The cells of a field in these rows; none where no column holds it. */
function cellsOf(rows: readonly (readonly string[])[], column: number | null | undefined): string[] {
  if (column === null || column === undefined) return []
  return rows.map(row => (row[column] ?? '').trim()).filter(Boolean)
}

/**
 * What is settled by the file itself, and what is left to ask: days that can be read in one order only, a unit in the
 * heading or beside each amount, a fraction that can be one thing only.
 */
export function settle(
  kind: ImportKind,
  { names, rows }: { names: readonly string[]; rows: readonly (readonly string[])[] },
  given: Reading,
): { reading: Reading; ask: Question[] } {
  const ask: Question[] = []
  let { dayOrder, mark, volume } = given
  const fields = importFields[kind]
  const days = fields
    .filter(({ written }) => written === 'day')
    .flatMap(({ field }) => cellsOf(rows, given.columns[field]))
  const orders = ordersFitting(days)
  // What fits no more, as after another column was chosen, is asked anew.
  if (dayOrder !== null && !orders.includes(dayOrder)) dayOrder = null
  if (orders.length === 1) dayOrder = orders[0]!
  else if (dayOrder === null && days.length > 0) ask.push('dayOrder')
  for (const { field } of fields.filter(({ written }) => written === 'volume')) {
    const column = given.columns[field]
    const cells = cellsOf(rows, column)
    if (cells.length === 0) continue
    if (needsUnit(cells)) {
      volume ??= unitNamed(names[column ?? 0] ?? '')
      if (volume === null) ask.push('volume')
    }
    const sure = needsMark(cells)
    if (sure !== 'ask') mark = sure
    else if (mark === null) ask.push('mark')
  }
  return { reading: { columns: given.columns, dayOrder, mark, volume }, ask }
}
