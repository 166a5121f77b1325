/** A logger's file as columns and rows, whatever stands above its heading. */

import Papa from 'papaparse'
import { type ColumnMapping, type DateOrder, readTime } from '../../domain/cure/index.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'

export interface LogFile {
  readonly columns: string[]
  readonly rows: Record<string, string>[]
  /** The line of the file the first row stands on. */
  readonly firstRow: number
}

/** Lines of a heading that loggers write before the columns. */
const mostHeadLines = 40

const delimiters = [',', ';', '\t', '|']

/**
 * What stands between the cells: with it a line holds a time, and the most beside it. A guess from the first lines
 * would often see nothing but what a logger writes above its columns.
 */
function delimiterOf(text: string): string | undefined {
  const cells = (delimiter: string) =>
    Papa.parse<string[]>(text, { delimiter, preview: mostHeadLines + 1 }).data.find(line => line.some(isTime))
      ?.length ?? 0
  return delimiters.toSorted((a, b) => cells(b) - cells(a))[0]
}

/** Reads the text of a file: any delimiter; the columns are the line above the first one that holds a time. */
export function readLog(file: string): LogFile {
  const text = file.replace(/^\uFEFF/, '')
  const { data } = Papa.parse<string[]>(text, { delimiter: delimiterOf(text) ?? ',' })
  const head = data.slice(0, mostHeadLines).findIndex((_, i) => (data[i + 1] ?? []).some(isTime))
  if (head < 0)
    throw new Refusal(
      'no-rows',
      'text',
      null,
      say(
        'No line of this file holds a date and time below a line of column names: export it as CSV, with its heading.',
      ),
    )
  const columns = named(data[head] ?? [])
  const rows = data
    .slice(head + 1)
    .map(cells => Object.fromEntries(columns.map((name, i) => [name, cells[i] ?? ''])))
  while (rows.length > 0 && Object.values(rows.at(-1) ?? {}).every(cell => cell.trim() === '')) rows.pop()
  return { columns, rows, firstRow: head + 2 }
}

const orders: readonly DateOrder[] = ['ymd', 'mdy', 'dmy']

function isTime(cell: string): boolean {
  return orders.some(order => readTime(cell, order, 'UTC') !== null)
}

/** The names of the columns, each once and none empty. */
function named(cells: readonly string[]): string[] {
  const names: string[] = []
  for (const [i, cell] of cells.entries()) {
    const name = cell.trim() || say('Column {i}', { i: i + 1 })
    names.push(names.includes(name) ? `${name} (${i + 1})` : name)
  }
  return names
}

export interface GuessedMapping {
  readonly mapping: ColumnMapping
  readonly dateOrder: DateOrder
  /** Null where neither the heading nor a value names it: only a person knows. */
  readonly unit: 'C' | 'F' | null
}

/** What the columns most likely hold, by their names and their first values; the person looks it over. */
export function guessMapping(log: LogFile, shop: { country: string }): GuessedMapping {
  const { columns, rows } = log
  const sample = rows.slice(0, 200)
  const time = columns.find(column => sample.some(row => isTime(row[column] ?? ''))) ?? columns[0] ?? ''
  const rest = columns.filter(column => column !== time)
  const take = (pattern: RegExp) => {
    const at = rest.findIndex(column => pattern.test(column))
    const [found = null] = at < 0 ? [] : rest.splice(at, 1)
    return found
  }
  const dewPoint = take(/dew/i)
  const panel = take(/panel|surface|paint|probe/i)
  const humidity = take(/hum|\brh\b|%/i)
  const air = take(/temp|air|°|celsius|fahrenheit/i) ?? rest[0] ?? ''
  const usual: DateOrder = shop.country === 'US' ? 'mdy' : 'dmy'
  const other: DateOrder = usual === 'mdy' ? 'dmy' : 'mdy'
  const unread = (order: DateOrder) =>
    sample.filter(row => readTime(row[time] ?? '', order, 'UTC') === null).length
  return {
    mapping: { time, air, panel, humidity, dewPoint },
    dateOrder: unread(usual) <= unread(other) ? usual : other,
    unit: unitNamed([air, ...sample.map(row => row[air] ?? '')]),
  }
}

/** The unit that the heading names, else a value. */
function unitNamed(texts: readonly string[]): 'C' | 'F' | null {
  for (const text of texts) {
    const own = /(?:°\s*|\(|\b|\d\s*)([CF])\b|(celsius)|(fahrenheit)/i.exec(text)
    if (own) return own[2] || own[1]?.toUpperCase() === 'C' ? 'C' : 'F'
  }
  return null
}
