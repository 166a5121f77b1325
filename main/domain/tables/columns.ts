/**
 * What a table holds, told once: the heading and the cells of its CSV and the schema of its JSON both follow from it.
 * The ends of the columns' names say the units (see the house's conventions), so they say how a cell is written.
 */
import { zonedOf } from '../calendar/index.ts'
import { majorOf } from '../money/index.ts'
import { defused } from './formulas.ts'

export type ColumnType = 'text' | 'whole' | 'number' | 'yes or no' | 'json'
export type Value = string | number | null

export interface Column {
  readonly name: string
  readonly type: ColumnType
  readonly nullable: boolean
  readonly about: string
  /** The table whose row it names by its id, where that row has a name people know. */
  readonly names: string | null
}

export interface TableShape {
  /** As the files call it: "job-steps". */
  readonly file: string
  readonly about: string
  readonly columns: readonly Column[]
}

/** What the cells of a shop are written with. */
export interface CellRules {
  readonly zone: string
  readonly currency: string
}

/** A row as it is kept, and the known names of the rows it points to, by column. */
export interface RowRead {
  readonly values: Readonly<Record<string, Value>>
  readonly names: Readonly<Record<string, string | number | null>>
}

const units: readonly (readonly [RegExp, (rules: CellRules) => string])[] = [
  [/Minor$/, ({ currency }) => ` (${currency})`],
  [/Min$/, () => ' (minutes)'],
  [/Days$/, () => ' (days)'],
  [/Ml$/, () => ' (ml)'],
  [/C$/, () => ' (°C)'],
  [/Percent$/, () => ' (%)'],
  [/Centi$/, () => ' (amount)'],
]

/** "promisedAt" is "Promised at", "priceMinor" is "Price (USD)". */
function heading(name: string, rules: CellRules): string {
  const unit = units.find(([end]) => end.test(name))
  const bare = unit ? name.replace(unit[0], '') : name
  const words = bare.replaceAll(/([a-z\d])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`)
  return words.charAt(0).toUpperCase() + words.slice(1) + (unit?.[1](rules) ?? '')
}

const isNamed = ({ names }: Column) => names !== null

/** The heading of a table's CSV: each column, and beside an id the name of what it points to. */
export function headings({ columns }: TableShape, rules: CellRules): string[] {
  return columns.flatMap(column => {
    const own = heading(column.name, rules)
    return isNamed(column) ? [own, own.replace(/ id$/, '')] : [own]
  })
}

/** A row's cells in the order of the headings. Times are ISO 8601 in the shop's zone with its offset, money is decimal. */
export function cells({ columns }: TableShape, { values, names }: RowRead, rules: CellRules): string[] {
  return columns.flatMap(column => {
    const own = cell(column, values[column.name] ?? null, rules)
    return isNamed(column) ? [own, text(names[column.name] ?? null)] : [own]
  })
}

function cell({ name, type }: Column, value: Value, { zone, currency }: CellRules): string {
  if (value === null) return ''
  if (type === 'yes or no') return value ? 'yes' : 'no'
  // A figure of ours is no formula: a minus before it stays a minus.
  if (typeof value === 'string') return defused(value)
  if (name === 'at' || name.endsWith('At'))
    return zonedOf(value, zone).toString({ smallestUnit: 'minute', timeZoneName: 'never' })
  if (name.endsWith('Minor')) return majorOf(value, currency)
  return String(/centi$/i.test(name) ? value / 100 : value)
}

const text = (value: Value) => (typeof value === 'string' ? defused(value) : String(value ?? ''))

/** A row as the JSON gives it: every column as it is kept, JSON as what it says. */
export function record({ columns }: TableShape, { values }: RowRead): Record<string, unknown> {
  return Object.fromEntries(columns.map(column => [column.name, told(column, values[column.name] ?? null)]))
}

function told({ type }: Column, value: Value): unknown {
  if (value === null) return null
  if (type === 'yes or no') return value !== 0
  return type === 'json' ? JSON.parse(String(value)) : value
}

const types: Readonly<Record<Exclude<ColumnType, 'json'>, string>> = {
  text: 'string',
  whole: 'integer',
  number: 'number',
  'yes or no': 'boolean',
}

const endings: readonly (readonly [RegExp, string])[] = [
  [/^at$|At$/, 'Minutes since 1970-01-01T00:00Z.'],
  [/On$|^date$/, 'YYYY-MM-DD in the shop’s zone.'],
  [/Minor$/, 'In the currency’s smallest unit.'],
  [/[cC]enti$/, 'Hundredths of the product’s unit.'],
  [/Min$/, 'Minutes.'],
]

function columnSchema({ name, type, nullable, about, names }: Column): object {
  const said = [
    about,
    endings.find(([end]) => end.test(name))?.[1],
    names === null ? '' : `The id of a row of ${names}.`,
  ]
  const description = said.filter(Boolean).join(' ')
  const shape = type === 'json' ? {} : { type: nullable ? [types[type], 'null'] : types[type] }
  return description === '' ? shape : { ...shape, description }
}

/** The schema (JSON Schema, draft 2020-12) of a file that holds these tables, or some of them. */
export function schemaOf(shapes: readonly TableShape[]): object {
  const table = ({ about, columns }: TableShape) => ({
    type: 'array',
    description: about,
    items: {
      type: 'object',
      additionalProperties: false,
      required: columns.map(column => column.name),
      properties: Object.fromEntries(columns.map(column => [column.name, columnSchema(column)])),
    },
  })
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'What a shop keeps in Lustrum, or the part of it that is about one person',
    type: 'object',
    additionalProperties: false,
    required: ['form', 'madeAt', 'zone', 'currency', 'tables'],
    properties: {
      form: { const: 1 },
      madeAt: { type: 'integer', description: 'Minutes since 1970-01-01T00:00Z.' },
      zone: { type: 'string', description: 'The shop’s time zone, an IANA name.' },
      currency: { type: 'string', description: 'ISO 4217.' },
      tables: {
        type: 'object',
        additionalProperties: false,
        properties: Object.fromEntries(shapes.map(shape => [shape.file, table(shape)])),
      },
    },
  }
}
