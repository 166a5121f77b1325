import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import type { Tx } from '../../store/store.ts'

/** Refuses a car that is not on file; one put away is, and what happened to it may still be entered. */
export async function assertOnFile(tx: Tx, vehicleId: string): Promise<void> {
  if ((await tx.vehicle.count({ where: { id: vehicleId } })) === 0)
    refuse('missing', { vehicleId }, say('This car is not on file; look it up again.'))
}
