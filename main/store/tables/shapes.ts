/** What the tables hold, read from the database itself, so that a new column is never forgotten. */
import type Database from 'better-sqlite3'
import type { Column, ColumnType, TableShape } from '../../domain/tables/index.ts'
import { words } from '../generated/words.ts'

/** A table as it is read: its shape, and for each column that points to a named row how SQL finds the name. */
export interface Table extends TableShape {
  readonly model: string
  readonly nameSql: Readonly<Record<string, string>>
}

/** What stays: keys that open something, files (they are taken as files), and what can always be made anew. */
const stays: Readonly<Record<string, readonly string[] | 'whole'>> = {
  ShelfPlan: 'whole',
  MailSettings: ['user'],
  SensorToken: ['hash'],
  FeedToken: ['hash'],
  StoredFile: ['bytes'],
}

/** What people know a row by, where that is not its name. */
const labels: Readonly<Record<string, string>> = {
  Vehicle: `trim(r."plate" || ' ' || r."make" || ' ' || r."model")`,
  Job: `'job ' || r."number"`,
  Lot: `'bottle ' || r."number"`,
  Invoice: `r."series" || '-' || r."number"`,
  Quote: `'quote ' || r."number"`,
  PurchaseOrder: `'order ' || r."number"`,
  ContainerSize: 'r."label"',
  UpkeepPlan: 'r."title"',
}

/** What a column of this name means in every table that does not say otherwise. */
const everywhere: Readonly<Record<string, string>> = {
  id: 'By which other rows point to this one.',
  version: 'How often it was saved.',
  name: 'What it is called.',
  note: 'What somebody wrote down about it.',
  position: 'Its place in their order.',
  reason: 'Why, in the words of whoever did it.',
  why: 'Why, in the words of whoever did it.',
  who: 'Who did it.',
  at: 'When it was done.',
  fromAt: 'When it begins.',
  toAt: 'When it ends.',
  createdAt: 'When it was first saved.',
  archivedAt: 'When it was put away; null: it is in use.',
  voidedAt: 'When it was taken back; null: it stands.',
  revokedAt: 'When it was made useless; null: it is good.',
}

const types: Readonly<Record<string, ColumnType>> = {
  TEXT: 'text',
  INTEGER: 'whole',
  REAL: 'number',
  BOOLEAN: 'yes or no',
  JSONB: 'json',
}

interface ColumnInfo {
  name: string
  type: string
  notnull: number
  pk: number
}

/** Every table of the shop's own, those that stay left out. */
export function tablesOf(database: Database.Database): Table[] {
  const names = database
    .prepare("select name from sqlite_master where type = 'table' order by name")
    .pluck()
    .all() as string[]
  const models = names.filter(name => !/^(sqlite_|_prisma)/.test(name))
  const infoOf = new Map(
    models.map(model => [model, database.pragma(`table_info("${model}")`) as ColumnInfo[]]),
  )
  const labelOf = (model: string) =>
    labels[model] ?? (infoOf.get(model)?.some(({ name }) => name === 'name') ? 'r."name"' : null)
  return models
    .filter(model => stays[model] !== 'whole')
    .map(model => {
      const links = database.pragma(`foreign_key_list("${model}")`) as { from: string; table: string }[]
      const kept = infoOf.get(model)!.filter(({ name }) => !stays[model]?.includes(name))
      // A row of the past may point to what is no row's own link: its column's name says to what.
      const target = (column: string) =>
        links.find(({ from }) => from === column)?.table ??
        models.find(other => column.endsWith(`${other}Id`) || column === `${lower(other)}Id`)
      const named = kept.flatMap(({ name }) => {
        const to = target(name)
        const label = to === undefined ? null : labelOf(to)
        return label === null ? [] : [[name, to!, label] as const]
      })
      const columns = kept.map(({ name, type, notnull, pk }): Column => {
        const link = named.find(([column]) => column === name)
        return {
          name,
          type: types[type] ?? 'text',
          nullable: !notnull && !pk,
          about: words[model]?.[name] ?? everywhere[name] ?? '',
          names: link ? fileOf(link[1]) : null,
        }
      })
      return {
        model,
        file: fileOf(model),
        about: words[model]?.[''] ?? '',
        columns,
        nameSql: Object.fromEntries(
          named.map(([column, to, label]) => [
            column,
            `(select ${label} from "${to}" r where r."id" = t."${column}")`,
          ]),
        ),
      }
    })
}

const lower = (model: string) => model.charAt(0).toLowerCase() + model.slice(1)

/** "StockMove" is "stock-moves". */
function fileOf(model: string): string {
  const words = model.replaceAll(/([a-z])([A-Z])/g, '$1-$2').toLowerCase()
  if (/s$|safety$|shop$|crew$|reach$|usual$|exposure$|seen$/.test(words)) return words
  return /[^aeo]y$/.test(words) ? `${words.slice(0, -1)}ies` : `${words}s`
}
