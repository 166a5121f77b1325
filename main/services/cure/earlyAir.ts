/** The air that fresh coats have cured in, out of the bays' readings, in words. */

import { minuteWords } from '../../domain/calendar/index.ts'
import { type AirReading, earlyCureUntil, earlyFlags, type LaidCoat } from '../../domain/cure/index.ts'
import { jobStays } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { marginWords, type UnitSystem } from '../../domain/measure/index.ts'
import { sentence } from '../../domain/words.ts'
import type { Tx } from '../../store/store.ts'

/** A car as far as the air around it goes: its steps with their clocks, and the bays it has stood in. */
type CuringCar = Omit<Parameters<typeof jobStays>[0], 'steps'> & {
  readonly steps: readonly (Parameters<typeof jobStays>[0]['steps'][number] & {
    readonly position: number
    readonly laid?: LaidCoat
  })[]
  readonly leftAt: number | null
}

interface Shop {
  readonly zone: string
  readonly nowAt: number
  readonly shop: { readonly units: UnitSystem }
}

/** By the position of its step, what each laid coat of a job did not meet in its early cure. */
export async function earlyAir(tx: Tx, floor: Shop, job: CuringCar): Promise<Map<number, string[]>> {
  const when = (at: number) => minuteWords(at, floor.zone, floor.nowAt)
  const words = await Promise.all(
    job.steps.map(async ({ position, laid }): Promise<[number, string[]]> => {
      if (!laid) return [position, []]
      const { profile, laying } = laid
      const toAt = Math.min(earlyCureUntil(profile, laying.toAt), job.leftAt ?? floor.nowAt, floor.nowAt)
      const readings = await readingsIn(tx, job, laying.toAt, toAt)
      return [position, earlyFlags(profile, readings).map(flag => flagWords(flag, floor.shop.units, when))]
    }),
  )
  return new Map(words)
}

/** What was measured of the air around the car, in order; at most the first thousand readings. */
async function readingsIn(tx: Tx, job: CuringCar, fromAt: number, toAt: number): Promise<AirReading[]> {
  const stays = jobStays(job).map(stay => ({
    bayId: stay.bay,
    at: { gte: Math.max(stay.from, fromAt), lte: Math.min(stay.to, toAt) },
  }))
  const rows = await tx.reading.findMany({
    where: { voidedAt: null, humidityPercent: { gt: 0 }, OR: stays },
    orderBy: { at: 'asc' },
    take: 1_000,
  })
  return rows.map(({ at, airC, panelC, humidityPercent }) => ({
    at,
    airC,
    panelC,
    humidityPercent: humidityPercent ?? 0,
  }))
}

function flagWords(
  { code, worst, limit, source, fromAt, toAt }: ReturnType<typeof earlyFlags>[number],
  units: UnitSystem,
  when: (at: number) => string,
): string {
  const from = source === 'ISO 8502-4' ? source : say('the profile ({source})', { source: say(source) })
  const span =
    fromAt === toAt ? when(fromAt) : say('{fromAt} to {toAt}', { fromAt: when(fromAt), toAt: when(toAt) })
  const what = {
    'air-dry': say('the humidity was down to {worst} %, under the {limit} % of {from}', {
      worst: Math.round(worst),
      limit,
      from,
    }),
    'air-damp': say('the humidity was up to {worst} %, over the {limit} % of {from}', {
      worst: Math.round(worst),
      limit,
      from,
    }),
    'dew-margin': say('the panel was only {worst} above the dew point, less than the {limit} of {from}', {
      worst: marginWords(worst, units),
      limit: marginWords(limit, units),
      from,
    }),
  }
  return say('{sentence} No time is moved by it; the data sheet decides.', {
    sentence: sentence(say('in its early cure, {span}, {what}', { span, what: what[code] })),
  })
}
