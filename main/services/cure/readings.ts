import {
  type CureProfile,
  cleanReadings,
  dewPointC,
  leastPanelC,
  type UsualFrom,
  usualTemperature,
} from '../../domain/cure/index.ts'
import { say } from '../../domain/language/index.ts'
import { degreesWords, type UnitSystem } from '../../domain/measure/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { fromJson } from '../../store/json.ts'
import {
  curingLog,
  lastReading,
  type ShownReading,
  saveReadings,
  shownReadings,
} from '../../store/readingRows.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import type { ReadingInput, UsualInput } from './inputs.ts'

const weekMin = 7 * 1440
const importsShown = 5

interface BayWithLogs {
  id: string
  name: string
  usual: { celsius: number; version: number } | null
  sensors: { id: string; name: string; createdAt: number }[]
  imports: { id: string; fileName: string; importedAt: number; count: number }[]
}

/** A reading somebody took and typed in. Refused with its field where it cannot be. */
export function addReading(desk: Desk, input: ReadingInput): Promise<{ added: number }> {
  return act(desk, async (tx, audit, nowAt) => {
    await liveBay(tx, input.bayId)
    checkReading(input, nowAt, (await shopOf(tx)).units)
    const { at, airC, panelC, humidityPercent } = input
    const added = await saveReadings(tx, input.bayId, 'typed', [{ at, airC, panelC, humidityPercent }])
    audit({ act: 'reading typed', entity: 'bay', entityId: input.bayId, detail: { ...input } })
    return { added }
  })
}

/** A typed reading goes through the same sieve as a logger's row, and is refused in the unit it was typed in. */
function checkReading(input: ReadingInput, nowAt: number, units: UnitSystem): void {
  const typed = (celsius: number | null) => (celsius === null ? null : degreesWords(celsius, units))
  const time = Temporal.Instant.fromEpochMilliseconds(input.at * 60_000).toString({ smallestUnit: 'minute' })
  const { refused } = cleanReadings(
    [
      {
        row: 1,
        time,
        air: degreesWords(input.airC, units),
        panel: typed(input.panelC),
        humidity: input.humidityPercent,
      },
    ],
    { zone: 'UTC', dateOrder: 'ymd', unit: 'C', latestAt: nowAt },
  )
  const [bad] = refused
  if (!bad) return
  const names = { time: 'at', air: 'airC', panel: 'panelC', humidity: 'humidityPercent', dewPoint: '' }
  refuse(
    bad.code,
    { [names[bad.field]]: bad.value },
    bad.message.replace(say('Row {row}: {message}', { row: 1, message: '' }), ''),
  )
}

/** Takes a reading that was wrong out of the count; it is kept, and said to be void. */
export function voidReading(desk: Desk, { id }: { id: number }): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const reading = found(
      await tx.reading.findFirst({ where: { id, voidedAt: null } }),
      { id },
      say('This reading is not there any more; look again.'),
    )
    await tx.reading.update({ where: { id }, data: { voidedAt: at } })
    audit({
      act: 'reading voided',
      entity: 'bay',
      entityId: reading.bayId,
      detail: { at: reading.at, airC: reading.airC },
    })
  })
}

/** What the owner says a bay usually has; null leaves it to the last week's readings. */
export function setBayUsual(desk: Desk, { bayId, version, celsius }: UsualInput): Promise<void> {
  return act(desk, async (tx, audit) => {
    await liveBay(tx, bayId)
    if (celsius !== null && !(celsius >= -20 && celsius <= 45)) {
      const words = degreesWords(celsius, (await shopOf(tx)).units)
      refuse('usual-impossible', { celsius }, say('{words} is no usual temperature of a bay.', { words }))
    }
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
  const bay = await tx.bay.findFirst({ where: { id: bayId, archivedAt: null } })
  return found(bay, { bayId }, say('This bay is not there; choose another.'))
}

export type ConditionsView = Awaited<ReturnType<typeof conditionsNow>>
export type BayConditionsView = Awaited<ReturnType<typeof bayConditions>>

/** How each bay stands now, and what the shop lays in them, with the air its profile wants. */
export async function conditionsNow(desk: Desk) {
  const tx = desk.store.read
  const nowAt = desk.now()
  const { zone } = await shopOf(tx)
  const bays = await tx.bay.findMany({
    where: { archivedAt: null },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
    include: withLogs,
  })
  const products = await tx.product.findMany({ where: { archivedAt: null }, orderBy: { name: 'asc' } })
  // Sensor by sensor, each one step in the index; all their readings together are millions.
  const sensorIds = bays.flatMap(bay => bay.sensors.map(sensor => sensor.id))
  const seen = await Promise.all(
    sensorIds.map(sensorId => tx.reading.aggregate({ where: { sensorId }, _max: { at: true } })),
  )
  const lastOf = new Map(sensorIds.map((id, i) => [id, seen[i]?._max.at ?? null]))
  return {
    nowAt,
    zone,
    bays: await Promise.all(bays.map(bay => bayConditions(tx, bay, nowAt, lastOf))),
    products: products.flatMap(({ id, name, cureProfile }) => {
      if (!cureProfile) return []
      const { temperature, humidity, sources } = fromJson<CureProfile>(cureProfile)
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

const withLogs = {
  usual: true,
  sensors: {
    where: { revokedAt: null },
    orderBy: { createdAt: 'asc' },
    select: { id: true, name: true, createdAt: true },
  },
  imports: {
    where: { takenBackAt: null },
    orderBy: { importedAt: 'desc' },
    take: importsShown,
    select: { id: true, fileName: true, importedAt: true, count: true },
  },
} as const

async function bayConditions(
  tx: Tx,
  { id, name, usual, sensors, imports }: BayWithLogs,
  nowAt: number,
  lastOf: ReadonlyMap<string | null, number | null>,
) {
  const last = await lastReading(tx, id, nowAt)
  const log = usual ? null : await curingLog(tx, id, nowAt - weekMin, nowAt)
  const usualC = usual?.celsius ?? (log && usualTemperature(log.readings, nowAt))
  const usualFrom: UsualFrom = usual ? 'set' : usualC === null ? 'profile' : 'last week'
  return {
    bayId: id,
    bayName: name,
    version: usual?.version ?? 0,
    /** The newest reading, however old. */
    last: last && readingView(last),
    /** The coldest a panel may be in that air; null without a humidity. */
    leastPanelC: last?.humidityPercent == null ? null : leastPanelC(last.airC, last.humidityPercent),
    /** What the clock projects with; null where neither the owner nor a reading says. */
    usualC,
    usualFrom,
    sensors: sensors.map(sensor => ({ ...sensor, lastAt: lastOf.get(sensor.id) ?? null })),
    /** The last files taken in, newest first; none that was taken back. */
    imports,
  }
}

/** More points than this no chart shows. */
const mostShown = 600

/** A bay's readings of a stretch of time, thinned to what a chart can show; the coldest are never thinned away. */
export async function listReadings(
  desk: Desk,
  { bayId, fromAt, toAt }: { bayId: string; fromAt: number; toAt: number },
) {
  const everyMin = Math.max(1, Math.ceil((toAt - fromAt) / mostShown))
  const rows = await shownReadings(desk.store.read, bayId, fromAt, toAt, everyMin)
  return rows.map(readingView)
}

export type ReadingView = ReturnType<typeof readingView>

function readingView({ id, at, source, airC, panelC, humidityPercent }: ShownReading) {
  const dewC = humidityPercent === null ? null : dewPointC(airC, humidityPercent)
  return { id, at, source, airC, panelC, humidityPercent, dewC }
}
