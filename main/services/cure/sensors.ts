import { createHash, randomBytes } from 'node:crypto'
import { cleanReadings, type RefusedRow } from '../../domain/cure/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { saveReadings } from '../../store/readingRows.ts'
import { act, type Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import type { PostedReadings } from './inputs.ts'
import { liveBay } from './readings.ts'

/** The token is random, so a plain digest of it cannot be guessed back. */
function hashOf(token: string): string {
  return createHash('sha256').update(token).digest('hex')
}

/** A new token with which a sensor may post readings of one bay. It is answered this once and kept nowhere. */
export async function createToken(
  desk: Desk,
  { bayId, name }: { bayId: string; name: string },
): Promise<{ id: string; token: string }> {
  const words = name.trim()
  if (words === '') refuse('name-missing', { name }, say('Give the sensor a name, such as "by the door".'))
  return act(desk, async (tx, audit, createdAt) => {
    await liveBay(tx, bayId)
    const token = randomBytes(32).toString('base64url')
    const { id } = await tx.sensorToken.create({
      data: { bayId, name: words, hash: hashOf(token), createdAt },
    })
    audit({ act: 'sensor added', entity: 'bay', entityId: bayId, detail: { sensorId: id, name: words } })
    return { id, token }
  })
}

/** Its token counts no more from now on; what it has posted stays. */
export function revokeToken(desk: Desk, { id }: { id: string }): Promise<void> {
  return act(desk, async (tx, audit, revokedAt) => {
    const sensor = await tx.sensorToken.findUnique({ where: { id } })
    if (!sensor || sensor.revokedAt !== null)
      refuse('missing', { id }, say('This sensor is not there any more; look again.'))
    await tx.sensorToken.update({ where: { id }, data: { revokedAt } })
    audit({
      act: 'sensor revoked',
      entity: 'bay',
      entityId: sensor.bayId,
      detail: { sensorId: id, name: sensor.name },
    })
  })
}

export interface Sensor {
  id: string
  name: string
  bayId: string
}

/** Whose token this is; null where it is nobody's, or counts no more. */
export async function sensorOf(desk: Desk, token: string): Promise<Sensor | null> {
  const row = await desk.store.read.sensorToken.findUnique({
    where: { hash: hashOf(token) },
    include: { bay: true },
  })
  return row && row.revokedAt === null && row.bay.archivedAt === null ? row : null
}

/** A sensor's clock may run a little ahead of this computer's. */
const aheadMin = 2

/** Takes in what a sensor posts. Rows that cannot be right are answered one by one; the rest is kept. */
export function takeReadings(
  desk: Desk,
  sensor: Sensor,
  { readings, unit }: PostedReadings,
): Promise<{ kept: number; known: number; refused: RefusedRow[] }> {
  const nowAt = desk.now()
  return desk.store.transact({ who: sensor.name, at: nowAt }, async tx => {
    const { zone } = await shopOf(tx)
    const report = cleanReadings(
      readings.map((reading, i) => ({ ...reading, row: i + 1 })),
      { zone, dateOrder: 'ymd', unit, latestAt: nowAt + aheadMin },
    )
    const kept = await saveReadings(tx, sensor.bayId, 'sensor', report.readings, {
      sensorId: sensor.id,
    })
    // No audit line: a reading says itself which sensor took it when, and one a minute would bury every other act.
    return { kept, known: readings.length - report.refused.length - kept, refused: [...report.refused] }
  })
}
