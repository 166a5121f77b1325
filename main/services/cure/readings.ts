import type { CureProfile } from '../../domain/cure/index.ts'
import {
  type BayReading,
  cleanReadings,
  dewPointC,
  leastPanelC,
  usualTemperature,
} from '../../domain/cure/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import {
  curingLog,
  lastReading,
  type ShownReading,
  saveReadings,
  shownReadings,
} from '../../store/readingRows.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import type { BayConditionsView, ConditionsView, ReadingView } from './conditionViews.ts'

export interface TypedReading {
  bayId: string
  at: number
  airC: number
  panelC: number | null
  humidityPercent: number | null
}

const weekMin = 7 * 1440

/** A reading somebody took and typed in. Refused with its field where it cannot be. */
export function addReading(desk: Desk, input: TypedReading): Promise<{ added: number }> {
  const nowAt = desk.now()
  return desk.store.transact({ who: desk.who, at: nowAt }, async (tx, audit) => {
    await liveBay(tx, input.bayId)
    const added = await saveReadings(tx, input.bayId, 'typed', [checked(input, nowAt)])
    audit({ act: 'reading typed', entity: 'bay', entityId: input.bayId, detail: { ...input } })
    return { added }
  })
}

/** A typed reading goes through the same sieve as a logger's row. */
function checked(input: TypedReading, nowAt: number): BayReading {
  const time = Temporal.Instant.fromEpochMilliseconds(input.at * 60_000).toString({ smallestUnit: 'minute' })
  const { readings, refused } = cleanReadings(
    [{ row: 1, time, air: input.airC, panel: input.panelC, humidity: input.humidityPercent }],
    { zone: 'UTC', dateOrder: 'ymd', unit: 'C', latestAt: nowAt },
  )
  const [bad] = refused
  if (bad) {
    const field = { time: 'at', air: 'airC', panel: 'panelC', humidity: 'humidityPercent', dewPoint: '' }[
      bad.field
    ]
    throw new Refusal(bad.code, field, bad.value, bad.message.replace(/^Row 1: /, ''))
  }
  return readings[0]!
}

/** Takes a reading that was wrong out of the count; it is kept, and said to be void. */
export function voidReading(desk: Desk, { id }: { id: number }): Promise<void> {
  const nowAt = desk.now()
  return desk.store.transact({ who: desk.who, at: nowAt }, async (tx, audit) => {
    const reading = await tx.reading.findUnique({ where: { id } })
    if (!reading || reading.voidedAt !== null)
      throw new Refusal('missing', 'id', id, 'This reading is not there any more; look again.')
    await tx.reading.update({ where: { id }, data: { voidedAt: nowAt } })
    audit({
      act: 'reading voided',
      entity: 'bay',
      entityId: reading.bayId,
      detail: { at: reading.at, airC: reading.airC },
    })
  })
}

/** What the owner says a bay usually has; null leaves it to the last week's readings. */
export async function setBayUsual(
  desk: Desk,
  { bayId, version, celsius }: { bayId: string; version: number; celsius: number | null },
): Promise<void> {
  if (celsius !== null && !(celsius >= -20 && celsius <= 45))
    throw new Refusal(
      'usual-impossible',
      'celsius',
      celsius,
      `${celsius} °C is no usual temperature of a bay.`,
    )
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    await liveBay(tx, bayId)
    const row = await tx.bayUsual.findUnique({ where: { bayId } })
    if ((row?.version ?? 0) !== version) assertFresh(0, 'bay', bayId)
    if (celsius === null) await tx.bayUsual.deleteMany({ where: { bayId } })
    else
      await tx.bayUsual.upsert({
        where: { bayId },
        create: { bayId, celsius },
        update: { celsius, version: { increment: 1 } },
      })
    audit({ act: 'usual set', entity: 'bay', entityId: bayId, detail: { celsius } })
  })
}

/** The bay, where it may still be used. */
export async function liveBay(tx: Tx, bayId: string): Promise<{ id: string; name: string }> {
  const bay = await tx.bay.findUnique({ where: { id: bayId } })
  if (!bay || bay.archivedAt !== null)
    throw new Refusal('missing', 'bayId', bayId, 'This bay is not there; choose another.')
  return bay
}

/** How each bay stands now, and what the shop lays in them. */
export async function conditionsNow(desk: Desk): Promise<ConditionsView> {
  const tx = desk.store.read
  const nowAt = desk.now()
  const { zone } = await shopOf(tx)
  const bays = await tx.bay.findMany({
    where: { archivedAt: null },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
    include: { usual: true, sensors: { where: { revokedAt: null }, orderBy: { createdAt: 'asc' } } },
  })
  const products = await tx.product.findMany({ where: { archivedAt: null }, orderBy: { name: 'asc' } })
  const seen = await tx.reading.groupBy({
    by: ['sensorId'],
    _max: { at: true },
    where: { sensorId: { not: null } },
  })
  const lastOf = new Map(seen.map(({ sensorId, _max }) => [sensorId, _max.at]))
  return {
    nowAt,
    zone,
    bays: await Promise.all(
      bays.map(async (bay): Promise<BayConditionsView> => {
        const last = await lastReading(tx, bay.id, nowAt)
        const log = bay.usual ? null : await curingLog(tx, bay.id, nowAt - weekMin, nowAt)
        const usualC = bay.usual?.celsius ?? (log && usualTemperature(log.readings, nowAt))
        return {
          bayId: bay.id,
          bayName: bay.name,
          version: bay.usual?.version ?? 0,
          last: last && readingView(last),
          leastPanelC: last?.humidityPercent == null ? null : leastPanelC(last.airC, last.humidityPercent),
          usualC,
          usualFrom: bay.usual ? 'set' : usualC === null ? 'profile' : 'last week',
          sensors: bay.sensors.map(({ id, name, createdAt }) => ({
            id,
            name,
            createdAt,
            lastAt: lastOf.get(id) ?? null,
          })),
        }
      }),
    ),
    products: products.flatMap(({ id, name, cureProfile }) => {
      if (!cureProfile) return []
      const { temperature, humidity, sources } = cureProfile as unknown as CureProfile
      return [
        {
          id,
          name,
          ...temperature,
          ...humidity,
          temperatureSource: sources.temperature,
          humiditySource: sources.humidity,
        },
      ]
    }),
  }
}

/** More points than this no chart shows. */
const mostShown = 600

/** A bay's readings of a stretch of time, thinned to what a chart can show; the coldest are never thinned away. */
export async function listReadings(
  desk: Desk,
  { bayId, fromAt, toAt }: { bayId: string; fromAt: number; toAt: number },
): Promise<ReadingView[]> {
  const everyMin = Math.max(1, Math.ceil((toAt - fromAt) / mostShown))
  const rows = await shownReadings(desk.store.read, bayId, fromAt, toAt, everyMin)
  return rows.map(readingView)
}

export function readingView({ id, at, source, airC, panelC, humidityPercent }: ShownReading): ReadingView {
  const dewC = humidityPercent === null ? null : dewPointC(airC, humidityPercent)
  return { id, at, source, airC, panelC, humidityPercent, dewC }
}
