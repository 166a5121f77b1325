/** The shop's gloss meters, by what they read of their tiles before each set. */
import { dateOf, dayNumber } from '../../domain/calendar/index.ts'
import { meterDrift, type TileReading } from '../../domain/measure/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import type { IntakeDraft } from './inputs.ts'
import { shopMeasureRules } from './measuring.ts'

/** Signed intakes looked at: enough for what the meters do these days, however long the shop has been there. */
const mostPages = 200

/** Each meter with each of its tiles, the one read last first. */
export async function listMeters(desk: Desk) {
  const { read } = desk.store
  const [{ zone }, rules, pages] = await Promise.all([
    shopOf(read),
    shopMeasureRules(read),
    read.intakeEntry.findMany({
      orderBy: { signedAt: 'desc' },
      take: mostPages,
      select: { signedAt: true, content: true },
    }),
  ])
  const readings = pages.flatMap(({ signedAt, content }) =>
    fromJson<{ draft: IntakeDraft }>(content).draft.gloss.flatMap(
      ({ instrument, tile, geometryDeg, tileGu, startGu }) =>
        instrument === '' || tileGu === null || startGu === null
          ? []
          : [
              {
                instrument,
                tile,
                geometryDeg,
                day: dayNumber(dateOf(signedAt, zone)),
                offGu: startGu - tileGu,
              },
            ],
    ),
  )
  const today = dayNumber(dateOf(desk.now(), zone))
  const meters = Map.groupBy(readings, each => JSON.stringify([each.instrument, each.tile, each.geometryDeg]))
  return [...meters.values()].flatMap((own: readonly (TileReading & (typeof readings)[number])[]) => {
    const [{ instrument, tile, geometryDeg } = { instrument: '', tile: '', geometryDeg: 60 as const }] = own
    const drift = meterDrift(own, { today, allowedGu: rules.glossAllowedGu })
    return drift ? [{ instrument, tile, geometryDeg, ...drift }] : []
  })
}
