/** What the screen of the bays' conditions is given. */
import type { ColumnMapping, DateOrder, RefusedRow } from '../../domain/cure/index.ts'

export type { ColumnMapping, DateOrder, RefusedRow }

export interface ReadingView {
  id: number
  at: number
  source: 'typed' | 'imported' | 'sensor'
  airC: number
  panelC: number | null
  humidityPercent: number | null
  /** Null where the humidity was not measured. */
  dewC: number | null
}

export interface BayConditionsView {
  bayId: string
  bayName: string
  version: number
  /** The newest reading, however old. */
  last: ReadingView | null
  /** The coldest a panel may be in that air; null without a humidity. */
  leastPanelC: number | null
  /** What the clock projects with; null where neither the owner nor a reading says. */
  usualC: number | null
  usualFrom: 'set' | 'last week' | 'profile'
  sensors: SensorView[]
  /** The last files taken in, newest first; none that was taken back. */
  imports: { id: string; fileName: string; importedAt: number; count: number }[]
}

export interface SensorView {
  id: string
  name: string
  createdAt: number
  lastAt: number | null
}

export interface ConditionsView {
  nowAt: number
  zone: string
  bays: BayConditionsView[]
  /** What is laid in this shop, with the air its profile wants. */
  products: {
    id: string
    name: string
    minC: number
    maxC: number
    minPercent: number
    maxPercent: number
    temperatureSource: string
    humiditySource: string
  }[]
}

/** A logger's file looked into before it is taken in. */
export interface ImportPreview {
  columns: string[]
  /** The first rows, column by column. */
  sample: string[][]
  rows: number
  mapping: ColumnMapping
  dateOrder: DateOrder
  /** Null where the file does not name it and no file like it was read before: ask. */
  unit: 'C' | 'F' | null
  /** The mapping is that of an earlier file with these columns. */
  remembered: boolean
}

export interface ImportReport {
  rows: number
  /** New readings, or colder than what was there. */
  added: number
  /** Readings of a minute that was there already, in the file or the bay. */
  duplicates: number
  outOfOrder: number
  refused: RefusedRow[]
}
