/** A logger's or a sensor's rows made into readings: what cannot be right is refused row by row, the rest is kept. */
import { say } from '../language/index.ts'
import { celsiusOf } from '../measure/index.ts'
import { humidityPercentOf } from './dewPoint.ts'
import { type DateOrder, readTime } from './readingTime.ts'

/** One row as it came: text of a file, or numbers posted by a sensor. Empty text is no value. */
export interface RawReading {
  /** What the report calls it: the line of the file. */
  readonly row: number
  readonly time: string
  readonly air: string | number
  readonly panel?: string | number | null
  readonly humidity?: string | number | null
  /** Where a logger gives this instead of the humidity. */
  readonly dewPoint?: string | number | null
}

/** Which columns of a file hold what. */
export interface ColumnMapping {
  readonly time: string
  readonly air: string
  readonly panel: string | null
  readonly humidity: string | null
  readonly dewPoint: string | null
}

export interface ReadingFormat {
  readonly zone: string
  readonly dateOrder: DateOrder
  /** Of values that do not name their own. */
  readonly unit: 'C' | 'F'
  /** Readings after this minute are refused: the logger's clock is wrong. */
  readonly latestAt: number
}

export interface BayReading {
  readonly at: number
  readonly airC: number
  readonly panelC: number | null
  readonly humidityPercent: number | null
}

export interface RefusedRow {
  readonly row: number
  readonly code: string
  readonly field: 'time' | 'air' | 'panel' | 'humidity' | 'dewPoint'
  readonly value: string | number
  readonly message: string
}

export interface ReadingsReport {
  /** In order of time, one a minute at most. */
  readonly readings: readonly BayReading[]
  readonly refused: readonly RefusedRow[]
  /** Rows of a minute another row had already: the colder one is kept. */
  readonly duplicates: number
  /** Rows that came after a later one. */
  readonly outOfOrder: number
}

/** The named columns of a file's rows (one record a row, by column name); row numbers count from `firstRow`. */
export function rawReadings(
  rows: readonly Readonly<Record<string, string>>[],
  mapping: ColumnMapping,
  firstRow = 2,
): RawReading[] {
  const cell = (row: Readonly<Record<string, string>>, column: string | null) =>
    column === null ? null : (row[column] ?? null)
  return rows.map((row, i) => ({
    row: firstRow + i,
    time: row[mapping.time] ?? '',
    air: row[mapping.air] ?? '',
    panel: cell(row, mapping.panel),
    humidity: cell(row, mapping.humidity),
    dewPoint: cell(row, mapping.dewPoint),
  }))
}

/** No bay is colder or hotter than this; a panel under a lamp is hotter. */
const airRangeC = { least: -40, most: 60 }
const panelRangeC = { least: -40, most: 150 }

interface TimedReading {
  readonly reading: BayReading
  readonly laterAt: number | null
}

/**
 * Reads rows in any order. Wall times in the hour a clock repeats are told apart by the order of the rows: one that
 * would go back in time is of the second pass.
 */
export function cleanReadings(rows: readonly RawReading[], format: ReadingFormat): ReadingsReport {
  const refused: RefusedRow[] = []
  const timed: TimedReading[] = []
  for (const raw of rows) {
    const read = readRow(raw, format)
    if ('code' in read) refused.push(read)
    else timed.push(read)
  }
  const readings = newestFirst(timed) ? timed.reverse() : timed
  const settled: BayReading[] = []
  let outOfOrder = 0
  let newest = Number.NEGATIVE_INFINITY
  let before = Number.NEGATIVE_INFINITY
  for (const { reading, laterAt } of readings) {
    const at = laterAt !== null && reading.at < before ? laterAt : reading.at
    if (at < newest) outOfOrder++
    newest = Math.max(newest, at)
    before = at
    settled.push({ ...reading, at })
  }
  settled.sort((a, b) => a.at - b.at || curingC(a) - curingC(b))
  const kept = settled.filter((reading, i) => reading.at !== settled[i - 1]?.at)
  return { readings: kept, refused, duplicates: settled.length - kept.length, outOfOrder }
}

/** Many loggers write the newest row first. */
function newestFirst(timed: readonly TimedReading[]): boolean {
  let falls = 0
  for (let i = 1; i < timed.length; i++) falls += Math.sign(timed[i - 1]!.reading.at - timed[i]!.reading.at)
  return falls > 0
}

function readRow(raw: RawReading, format: ReadingFormat): TimedReading | RefusedRow {
  const refuse = (field: RefusedRow['field'], code: string, message: string): RefusedRow => {
    const value = raw[field] ?? ''
    return {
      row: raw.row,
      field,
      code,
      value,
      message: say('Row {row}: {message}', { row: raw.row, message }),
    }
  }
  const time = readTime(raw.time, format.dateOrder, format.zone)
  if (!time)
    return refuse(
      'time',
      'time-unread',
      say('"{time}" is not a date and time; check the order of day and month.', { time: raw.time }),
    )
  if (time.at > format.latestAt)
    return refuse(
      'time',
      'time-future',
      say("{time} is still to come; set the logger's clock.", { time: raw.time }),
    )

  const values = { air: null, panel: null, humidity: null, dewPoint: null } as Record<
    ValueField,
    number | null
  >
  for (const field of valueFields) {
    const value = readValue(raw[field], field === 'humidity' ? '%' : format.unit)
    if (value === 'unread')
      return refuse(
        field,
        'value-unread',
        say('"{raw}" is not a number; mend the row or leave it out.', { raw: raw[field] }),
      )
    values[field] = value
  }
  const { air: airC, panel: panelC, dewPoint: dewC } = values
  if (airC === null)
    return refuse('air', 'value-missing', say('it has no air temperature; check the column.'))
  for (const [field, celsius, range] of [
    ['air', airC, airRangeC],
    ['panel', panelC, panelRangeC],
    ['dewPoint', dewC, airRangeC],
  ] as const)
    if (celsius !== null && !(celsius >= range.least && celsius <= range.most))
      return refuse(
        field,
        'temperature-impossible',
        say('{raw} cannot be; check the value and its unit.', { raw: typedDegrees(raw[field], format.unit) }),
      )
  const humidityPercent = values.humidity ?? (dewC === null ? null : humidityPercentOf(airC, dewC))
  if (humidityPercent !== null && !(humidityPercent > 0 && humidityPercent <= 100)) {
    const field = values.humidity === null ? 'dewPoint' : 'humidity'
    return refuse(
      field,
      'humidity-impossible',
      say('{humidityPercent} % humidity cannot be; check the sensor.', {
        humidityPercent: shown(humidityPercent),
      }),
    )
  }
  return { reading: { at: time.at, airC, panelC, humidityPercent }, laterAt: time.laterAt }
}

const valueFields = ['air', 'panel', 'humidity', 'dewPoint'] as const
type ValueField = (typeof valueFields)[number]

const valueForm = /^([+-]?\d+(?:[.,]\d+)?)\s*(?:(?:°\s*)?([CF])|%(?:\s*RH)?)?$/i

/** A number with or without its unit, decimal point or comma; temperatures in Celsius. Null: no value. */
function readValue(raw: string | number | null | undefined, unit: 'C' | 'F' | '%'): number | null | 'unread' {
  const text = String(raw ?? '').trim()
  if (text === '') return null
  const parts = valueForm.exec(text)
  if (!parts) return 'unread'
  const value = Number(parts[1]!.replace(',', '.'))
  const own = parts[2]?.toUpperCase() ?? unit
  if (unit === '%' || own !== 'F') return value
  // Below absolute zero there is no Celsius to give; the number itself is as impossible.
  return value < -459 ? value : celsiusOf(value)
}

/** The temperature in the words it came in, with the unit it was read by. */
function typedDegrees(raw: string | number | null | undefined, unit: 'C' | 'F'): string {
  const text = String(raw ?? '').trim()
  return /[CF]$/i.test(text) ? text : `${typeof raw === 'number' ? shown(raw) : text} °${unit}`
}

function shown(value: number): number {
  return Math.round(value * 10) / 10
}

/** The temperature a coat cured at: the panel's where it was measured, else the air's. */
function curingC({ panelC, airC }: BayReading): number {
  return panelC ?? airC
}
