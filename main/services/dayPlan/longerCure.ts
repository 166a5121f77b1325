/** The hold of one car made longer: what its data sheet says stays as it is, and so does every other car's. */
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { curingAt } from '../../domain/relay/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Audit } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import { loadFloor } from '../floor/loadFloor.ts'

/** Four weeks: whatever cures longer is a fault that is mended otherwise. */
const mostMin = 40_320

export interface LongerCure {
  readonly jobId: string
  readonly moreMin: number
}

/** @throws Refusal where nothing of the car has still to cure, or its hold would be longer than any cure takes. */
export function holdToLengthen(floor: Floor, { jobId, moreMin }: LongerCure) {
  const job = found(
    floor.jobs.find(each => each.id === jobId) ?? null,
    { jobId },
    say('This car is not there any more; choose another.'),
  )
  const hold = job.steps[curingAt(job.steps, floor.nowAt)]
  if (!hold) refuse('no-cure', { jobId }, say('Nothing of this car has still to cure; choose another.'))
  if (hold.minutes + moreMin > mostMin)
    refuse('cure-long', { moreMin }, say('No cure takes more than four weeks; give less.'))
  return { job, hold }
}

/**
 * Writes the longer hold. `isLaid`: the plan has a place for the car with it, and whoever calls moves it there in the
 * same act; a car that is here needs none, since it is projected.
 */
export async function lengthenCure(
  tx: Tx,
  audit: Audit,
  at: number,
  { isLaid, ...cure }: LongerCure & { readonly isLaid: boolean },
): Promise<void> {
  const { job, hold } = holdToLengthen(await loadFloor(tx, at, at), cure)
  const { jobId, moreMin } = cure
  if (job.status !== 'inShop' && !isLaid)
    refuse(
      'not-laid',
      { jobId },
      say(
        'This car stays where it is: it is pinned, has another visit first, or comes later than was looked at. Let it go first, then ask again.',
      ),
    )
  await tx.jobStep.update({
    where: { jobId_position: { jobId: job.id, position: hold.position } },
    data: { minutes: { increment: moreMin } },
  })
  // One that is here is not moved by the plan, so that nothing else would make its open forms stale.
  if (job.status === 'inShop')
    await tx.job.update({ where: { id: job.id }, data: { version: { increment: 1 } } })
  audit({ act: 'cure lengthened', entity: 'job', entityId: job.id, detail: { step: hold.name, moreMin } })
}

/** What the hold of a car waits for: its profile gives the longer cure to every car to come. */
export async function curedProduct(tx: Tx, floor: Floor, jobId: string) {
  const job = floor.jobs.find(each => each.id === jobId)
  if (!job) return null
  const hold = curingAt(job.steps, floor.nowAt)
  const productId = job.steps.slice(0, hold + 1).findLast(step => step.productId !== null)?.productId ?? null
  if (productId === null) return null
  return tx.product.findUnique({ where: { id: productId }, select: { id: true, name: true } })
}
