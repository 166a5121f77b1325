import type { ForcedCureRow } from '../../domain/cure/index.ts'
import { can } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { degreesWords } from '../../domain/measure/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import type { Desk } from '../desk/desk.ts'
import type { HeatingInput } from './inputs.ts'
import { changeJob } from './jobChange.ts'

/**
 * Records a lamp or a heated bay. It shortens a cure only where the product's data sheet has a row for it; the answer
 * says whether one was met.
 */
export async function addHeating(
  desk: Desk,
  input: HeatingInput,
): Promise<{ version: number; counted: boolean }> {
  const { jobId, version, fromAt, toAt, panelC } = input
  let counted = false
  const saved = await changeJob(desk, { id: jobId, version }, ({ row, job, floor, when }) => {
    const laid = job.steps.flatMap(step => step.laid ?? [])
    if (!can(row, 'work') || laid.length === 0)
      refuse('nothing-laid', { fromAt }, say('No coat of this job is laid, so there is none to heat.'))
    const first = Math.min(...laid.map(coat => coat.clock.coatEndAt))
    if (fromAt < first)
      refuse(
        'too-early',
        { fromAt },
        say('The first coat was finished {first}; heat counts from then.', { first: when(first) }),
      )
    if (toAt <= fromAt)
      refuse('heating-backwards', { toAt }, say('The heating ends before it begins; exchange the two times.'))
    if (toAt > floor.nowAt)
      refuse(
        'to-come',
        { toAt },
        say('{toAt} is still to come; record what has happened.', { toAt: when(toAt) }),
      )
    if (!(panelC >= 20 && panelC <= 150))
      refuse(
        'panel-impossible',
        { panelC },
        say('{panelC} is no panel under a lamp; look again.', {
          panelC: degreesWords(panelC, floor.shop.units),
        }),
      )
    counted = laid.some(({ profile, clock }) => meets(profile.forcedCure, input, clock.coatEndAt))
    return {
      act: 'heated',
      detail: { fromAt, toAt, panelC, counted },
      also: tx =>
        tx.forcedCure.create({
          data: { jobId, fromAt, toAt, panelC, note: input.note.trim(), who: desk.who, at: floor.nowAt },
        }),
    }
  })
  return { ...saved, counted }
}

function meets(
  rows: readonly ForcedCureRow[],
  { fromAt, toAt, panelC }: HeatingInput,
  coatEndAt: number,
): boolean {
  return rows.some(row => panelC >= row.panelC && toAt - Math.max(fromAt, coatEndAt) >= row.minutes)
}

/** Takes back a heated cure that was recorded wrongly; it is kept, and counts no more. */
export function voidHeating(
  desk: Desk,
  { jobId, version, id }: { jobId: string; version: number; id: string },
): Promise<{ version: number }> {
  return changeJob(desk, { id: jobId, version }, async ({ tx, floor }) => {
    const heating = found(
      await tx.forcedCure.findFirst({ where: { id, jobId, voidedAt: null } }),
      { id },
      say('This heated cure is not there any more; look again.'),
    )
    return {
      act: 'heating taken back',
      detail: { fromAt: heating.fromAt, toAt: heating.toAt, panelC: heating.panelC },
      also: tx => tx.forcedCure.update({ where: { id }, data: { voidedAt: floor.nowAt } }),
    }
  })
}
