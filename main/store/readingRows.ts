import type { Tx } from './store.ts'

export type ReadingSource = 'typed' | 'imported' | 'sensor'

/** What is kept of one reading. */
export interface ReadingValues {
  readonly at: number
  readonly airC: number
  readonly panelC: number | null
  readonly humidityPercent: number | null
}

/**
 * Adds readings of one bay in one statement, however many there are. One that is there already, of the same source, file
 * and minute, stays; where the new one is colder it takes its place, since cold lengthens a cure every time. What
 * another file that stands has brought in the very same words is left out; what it says otherwise lies beside it, so that
 * either file can be taken back.
 * @returns how many were new or colder.
 */
export async function saveReadings(
  tx: Tx,
  bayId: string,
  source: ReadingSource,
  readings: readonly ReadingValues[],
  { sensorId = null, importId = '' }: { sensorId?: string | null; importId?: string } = {},
): Promise<number> {
  if (readings.length === 0) return 0
  const rows = JSON.stringify(readings.map(each => [each.at, each.airC, each.panelC, each.humidityPercent]))
  return tx.$executeRaw`
    insert into Reading (bayId, at, source, airC, panelC, humidityPercent, sensorId, importId)
    select ${bayId}, value ->> 0, ${source}, value ->> 1, value ->> 2, value ->> 3, ${sensorId}, ${importId}
    from json_each(${rows}) where not exists (
      select 1 from Reading r left join ReadingImport i on i.id = r.importId
      where r.bayId = ${bayId} and r.at = value ->> 0 and r.source = ${source} and r.importId <> ${importId}
        and r.airC = value ->> 1 and r.panelC is value ->> 2 and r.humidityPercent is value ->> 3
        and i.takenBackAt is null
    )
    on conflict (bayId, at, source, importId) do update
      set airC = excluded.airC, panelC = excluded.panelC, humidityPercent = excluded.humidityPercent
      where Reading.voidedAt is null
        and coalesce(excluded.panelC, excluded.airC) < coalesce(Reading.panelC, Reading.airC)`
}

/** What a coat in a bay cured at, one a minute at most: the panel's temperature where it was measured, else the air's. */
export interface CuringLog {
  readonly bayId: string
  readonly readings: readonly { readonly at: number; readonly celsius: number }[]
}

/**
 * A bay's log from `fromAt` on, with the last reading before it; of two sources in one minute the colder counts. The
 * columns come as two JSON lists: a log of weeks costs one row then.
 */
export async function curingLog(tx: Tx, bayId: string, fromAt: number, toAt: number): Promise<CuringLog> {
  const [row] = await tx.$queryRaw<{ readings: string }[]>`
    select json_group_array(json_array(at, celsius) order by at) as readings from (
      select at, min(coalesce(panelC, airC)) as celsius from Reading
      where bayId = ${bayId} and voidedAt is null and at <= ${toAt} and at >= coalesce(
        (select max(at) from Reading where bayId = ${bayId} and voidedAt is null and at <= ${fromAt}), ${fromAt})
      group by at
    )`
  const readings = JSON.parse(row?.readings ?? '[]') as [at: number, celsius: number][]
  return { bayId, readings: readings.map(([at, celsius]) => ({ at, celsius })) }
}

/** A reading as it is shown. */
export interface ShownReading extends ReadingValues {
  readonly id: number
  readonly source: ReadingSource
}

/** A bay's readings in `[fromAt, toAt]`, oldest first; where they lie closer than `everyMin`, the coldest of each such stretch. */
export function shownReadings(
  tx: Tx,
  bayId: string,
  fromAt: number,
  toAt: number,
  everyMin: number,
): Promise<ShownReading[]> {
  // SQLite takes the other columns from the row that min() found.
  return tx.$queryRaw<ShownReading[]>`
    select id, at, source, airC, panelC, humidityPercent from (
      select id, at, source, airC, panelC, humidityPercent, min(coalesce(panelC, airC)) as coldest from Reading
      where bayId = ${bayId} and voidedAt is null and at between ${fromAt} and ${toAt}
      group by at / cast(${everyMin} as integer)
    ) order by at`
}

/** The last reading of a bay at or before a minute; null where there is none. */
export async function lastReading(tx: Tx, bayId: string, at: number): Promise<ShownReading | null> {
  const row = await tx.reading.findFirst({
    where: { bayId, voidedAt: null, at: { lte: at } },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
  })
  return row && { ...row, source: row.source as ReadingSource }
}
