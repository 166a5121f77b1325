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
 * Adds readings of one bay in one statement, however many there are. One that is there already, of the same source and
 * minute, stays; where the new one is colder it takes its place, since cold lengthens a cure every time.
 * @returns how many were new or colder.
 */
export async function saveReadings(
  tx: Tx,
  bayId: string,
  source: ReadingSource,
  readings: readonly ReadingValues[],
  sensorId: string | null = null,
): Promise<number> {
  if (readings.length === 0) return 0
  const rows = JSON.stringify(readings.map(each => [each.at, each.airC, each.panelC, each.humidityPercent]))
  return tx.$executeRaw`
    insert into Reading (bayId, at, source, airC, panelC, humidityPercent, sensorId)
    select ${bayId}, value ->> 0, ${source}, value ->> 1, value ->> 2, value ->> 3, ${sensorId}
    from json_each(${rows}) where true
    on conflict (bayId, at, source) do update
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
  const [row] = await tx.$queryRaw<{ ats: string; degrees: string }[]>`
    select json_group_array(at order by at) as ats, json_group_array(celsius order by at) as degrees from (
      select at, min(coalesce(panelC, airC)) as celsius from Reading
      where bayId = ${bayId} and voidedAt is null and at <= ${toAt} and at >= coalesce(
        (select max(at) from Reading where bayId = ${bayId} and voidedAt is null and at <= ${fromAt}), ${fromAt})
      group by at
    )`
  const ats = JSON.parse(row?.ats ?? '[]') as number[]
  const degrees = JSON.parse(row?.degrees ?? '[]') as number[]
  return { bayId, readings: ats.map((at, i) => ({ at, celsius: degrees[i]! })) }
}
