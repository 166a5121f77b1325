/** Who does which step: given to another before it begins, or passed on in the middle of it. */

import { judge, projectFloor } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import type { Skill } from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst } from '../desk/ask.ts'
import type { Desk } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import { judged } from '../floor/judged.ts'
import { assertCan } from './assertCan.ts'
import type { GiveStepInput } from './inputs.ts'
import { changeJob } from './jobChange.ts'
import { checkMoment } from './jobSteps.ts'

/**
 * Gives a step to another person. Before it begins it is simply theirs; under way it passes to them at `at`, and both
 * times are kept. Refused where they lack its skill; where they are away then, or with another car, it asks first, and
 * names each promise that would be worse off.
 */
export function giveStep(desk: Desk, input: GiveStepInput): Promise<{ version: number }> {
  const { id, version, position, fromId, toId, at = desk.now(), accepted } = input
  return changeJob(desk, { id, version }, now => {
    const { floor, row, job } = now
    assertCan(row, 'move')
    const step = found(
      job.steps.find(each => each.position === position),
      { position },
      say('This step is not there; look at the job again.'),
    )
    if (step.kind === 'hold' || step.actualEndAt !== null)
      refuse('over', { position }, say('"{name}" needs nobody any more.', { name: step.name }))
    if (!step.crewIds.includes(fromId))
      refuse('stale', { fromId }, say('"{name}" is somebody else’s by now; look again.', { name: step.name }))
    if (step.crewIds.includes(toId))
      refuse('as-before', { toId }, say('That person is on "{name}" already.', { name: step.name }))
    const person = found(
      floor.crew.find(each => each.id === toId && !each.archived),
      { toId },
      say('This person is not of the crew any more; choose another.'),
    )
    if (step.skill !== null && !person.skills.includes(step.skill as Skill))
      refuse(
        'no-skill',
        { toId },
        say('{name} is not noted as able to do "{step}": choose another, or add the skill in the settings.', {
          name: person.name,
          step: step.name,
        }),
      )
    const begun = step.actualStartAt !== null
    if (begun) checkMoment(now, at, step.actualStartAt)
    askFirst('touches-bookings', worse(floor, withPerson(floor, id, { position, fromId, toId })), {
      field: 'toId',
      lead: say('Given to {name}, this stands in the way:', { name: person.name }),
      accepted,
    })
    const { id: stepId } = row.steps.find(each => each.position === position)!
    return {
      insert: async tx => {
        await moveCrew(tx, stepId, { fromId, toId })
        if (begun)
          await tx.stepPass.create({ data: { jobId: id, position, fromCrewId: fromId, toCrewId: toId, at } })
      },
      act: begun ? 'passed on' : 'given',
      detail: {
        step: step.name,
        position,
        from: floor.crewNames.get(fromId) ?? '',
        to: person.name,
        ...(begun && { at }),
      },
    }
  })
}

/** One person of a step in another's place. */
export interface Swap {
  readonly position: number
  readonly fromId: string
  readonly toId: string
}

/** The floor with another person on a step, projected anew. */
export function withPerson(floor: Floor, jobId: string, { position, fromId, toId }: Swap): Floor {
  const other = (ids: readonly string[] = []) => ids.map(id => (id === fromId ? toId : id))
  return projectFloor({
    ...floor,
    jobs: floor.jobs.map(job =>
      job.id === jobId
        ? {
            ...job,
            steps: job.steps.map(step =>
              step.position === position
                ? { ...step, crewIds: other(step.crewIds), helperIds: other(step.helperIds) }
                : step,
            ),
          }
        : job,
    ),
  })
}

/** Writes the swap; who helps goes on helping. */
export async function moveCrew(
  tx: Tx,
  stepId: string,
  { fromId, toId }: Pick<Swap, 'fromId' | 'toId'>,
): Promise<void> {
  const { helps } = await tx.jobStepCrew.delete({ where: { stepId_crewId: { stepId, crewId: fromId } } })
  await tx.jobStepCrew.create({ data: { stepId, crewId: toId, helps } })
}

/** What stands in the way on a floor that did not before, and the promises that are worse off, in sentences. */
export function worse(before: Floor, after: Floor): string[] {
  const was = judged(before)
  const is = judge(after)
  const known = new Set(was.conflicts.map(each => `${each.jobId} ${each.words}`))
  const late = after.jobs.flatMap(job => {
    const { lateMin } = is.of(job)
    return job.status !== 'held' && lateMin > was.of(job).lateMin
      ? say('{name} will be late for its promise.', { name: after.jobNames.get(job.id) ?? '' })
      : []
  })
  const lacking = is.conflicts.filter(each => each.uncovered && !known.has(`${each.jobId} ${each.words}`))
  return [...new Set([...lacking.map(each => each.words), ...late])]
}
