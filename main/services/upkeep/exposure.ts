import { type Exposure, type ScaledInterval, scaleInterval } from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveSingle } from '../desk/keep.ts'
import type { ExposureInput } from './inputs.ts'
import { assertOnFile } from './onFile.ts'
import { type UpkeepRules, upkeepRules } from './settings.ts'

/** How a car lives; nothing chosen where nothing was entered. */
export async function exposureOf(tx: Tx, vehicleId: string): Promise<{ choices: Exposure; version: number }> {
  const row = await tx.vehicleExposure.findUnique({ where: { vehicleId } })
  return { choices: (row?.choices ?? {}) as Exposure, version: row?.version ?? 0 }
}

/** Choices whose factor or choice the shop has dropped since count as not made. */
export function scaled(productDays: number, exposure: Exposure, rules: UpkeepRules): ScaledInterval {
  const known = Object.entries(exposure).filter(([factorId, choiceId]) =>
    rules.factors.some(
      factor => factor.id === factorId && factor.choices.some(choice => choice.id === choiceId),
    ),
  )
  return scaleInterval(productDays, Object.fromEntries(known), rules.factors)
}

/** Enters how a car lives. Plans that stand are not moved by it; a proposal to move them may follow. */
export function saveExposure(desk: Desk, input: ExposureInput): Promise<{ version: number }> {
  const { vehicleId, version } = input
  return act(desk, async (tx, audit) => {
    const rules = await upkeepRules(tx)
    // A choice that is none is refused here, where it is made.
    scaleInterval(365, input.choices, rules.factors)
    await assertOnFile(tx, vehicleId)
    const kept = { table: tx.vehicleExposure, entity: 'exposure' }
    const saved = await saveSingle(audit, kept, { key: { vehicleId }, version }, { choices: input.choices })
    return { version: saved.version }
  })
}
