/** What the shop judges its readings by: the floor under which paint is not corrected, and how well its meters repeat. */
import { checkMeasureSettings, type MeasureRules, measureRules } from '../../domain/measure/index.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveSingle } from '../desk/keep.ts'
import { shopOf } from '../desk/shopView.ts'
import type { MeasuringInput } from './inputs.ts'

export type MeasuringView = Awaited<ReturnType<typeof getMeasuring>>

const only = { where: { id: 1 } }

/** The shop's figures, with the usual ones where it set none. */
export async function shopMeasureRules(tx: Tx): Promise<MeasureRules> {
  return measureRules(await tx.measureSettings.findUnique(only))
}

/** What the state of paint is judged by, and the units it is said in. */
export async function paintJudgedBy(tx: Tx) {
  const [{ zone, units }, rules] = await Promise.all([shopOf(tx), shopMeasureRules(tx)])
  return { zone, units, rules }
}

export async function getMeasuring({ store }: Desk) {
  const row = await store.read.measureSettings.findUnique(only)
  return {
    floorUm: row?.floorUm ?? null,
    gaugeRepeatabilityUm: row?.gaugeRepeatabilityUm ?? null,
    glossAllowedGu: row?.glossAllowedGu ?? null,
    glossRepeatabilityGu: row?.glossRepeatabilityGu ?? null,
    version: row?.version ?? 0,
    usual: measureRules(),
  }
}

/** Signed pages keep the figures they were judged by. */
export function saveMeasuring(
  desk: Desk,
  { version, ...settings }: MeasuringInput,
): Promise<{ version: number }> {
  checkMeasureSettings(settings)
  return act(desk, async (tx, audit) => {
    const kept = { table: tx.measureSettings, entity: 'measuring' }
    const { version: now } = await saveSingle(audit, kept, { key: { id: 1 }, version }, settings)
    return { version: now }
  })
}
