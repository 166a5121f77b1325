import { say } from '../../domain/language/index.ts'
import { found, refuse, withField } from '../../domain/refusal.ts'
import { assertFresh } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { drawForStep } from './confirmDraws.ts'
import type { ConfirmPlannedInput } from './inputs.ts'
import { plannedDraws, stepsLeft } from './stepsToConfirm.ts'

/**
 * Confirms finished steps as their recipes say, all in one act or none.
 * @throws Refusal with its field under `steps.<i>`, so that the screen knows which of them wants a look.
 */
export function confirmPlanned(desk: Desk, { steps }: ConfirmPlannedInput) {
  return act(desk, async (tx, audit) => {
    for (const [i, { jobId, position, version }] of steps.entries())
      try {
        const job = found(
          await tx.job.findUnique({
            where: { id: jobId },
            select: { version: true, steps: { where: { position }, select: { actualEndAt: true } } },
          }),
          { jobId },
          say('This job is not there any more; look at the list again.'),
        )
        if (job.version !== version) assertFresh(0, 'job', jobId)
        const draws = await plannedDraws(tx, desk.now(), { jobId, position })
        if (draws.length === 0 || job.steps[0]?.actualEndAt == null)
          refuse(
            'wants-a-look',
            { position },
            say('What this step used is not as its recipe says: look at it.'),
          )
        await drawForStep(tx, audit, desk, { jobId, position, draws })
      } catch (error) {
        throw withField(error, field => `steps.${i}.${field}`)
      }
    return { confirmed: steps.length, left: await stepsLeft(tx, desk.now()) }
  })
}
