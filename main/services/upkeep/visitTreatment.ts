import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import type { SizeClass } from '../../domain/shop/index.ts'
import type { PlanKind } from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'
import type { UpkeepRules } from './settings.ts'

/**
 * The treatment a visit of a kind is booked as: what the shop chose, else of those sold the shortest that fits: for a
 * topper's renewal one that lays a topper and no coating, for any other visit one that lays neither.
 * @throws Refusal where nothing sold fits.
 */
export async function treatmentFor(
  tx: Tx,
  rules: UpkeepRules,
  kind: PlanKind,
): Promise<{ id: string; name: string }> {
  const sold = await tx.treatment.findMany({
    where: { archivedAt: null },
    include: { steps: true },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
  })
  const chosen = sold.find(each => each.id === rules.treatments[kind])
  if (chosen) return chosen
  const fits = sold.filter(({ steps }) => {
    const stages = new Set(steps.map(step => step.stage))
    return !stages.has('coat') && stages.has('topper') === (kind === 'topper')
  })
  const [shortest] = fits.sort((a, b) => handsOn(a.steps) - handsOn(b.steps))
  if (!shortest)
    refuse(
      'treatment-missing',
      { treatments: kind },
      kind === 'topper'
        ? say(
            'No treatment sold lays a topper alone: add one, or choose one for this visit in the upkeep rules.',
          )
        : say('No treatment sold fits a visit without coating: choose one in the upkeep rules.'),
    )
  return shortest
}

/** Hands-on minutes on a middling car. */
export function handsOn(steps: readonly { minutes: unknown }[]): number {
  return steps.reduce((sum, step) => sum + ((step.minutes as Record<SizeClass, number>).medium ?? 0), 0)
}
