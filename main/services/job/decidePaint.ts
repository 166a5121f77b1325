/** What is decided where the paint forbids a part of what was sold, and what becomes of the job by it. */
import { minutesWithout } from '../../domain/job/index.ts'
import { say, word } from '../../domain/language/index.ts'
import type { PaintRule } from '../../domain/paint/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { panelsOver, type Scope, type SizeClass, shareOfPanels } from '../../domain/shop/index.ts'
import { priceShare } from '../../domain/treatment/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { type JobRow, jobRows } from '../floor/jobRows.ts'
import { laidAnew } from '../floor/laidAnew.ts'
import { writePlaces } from '../floor/placed.ts'
import type { DecideInput } from '../intake/inputs.ts'
import { forbidden, intakeJob } from '../intake/jobPaint.ts'
import { paintJudgedBy } from '../intake/measuring.ts'
import { treatmentOf, withSteps } from '../setUp/treatmentCheck.ts'
import { workKey, writeStepDraws } from '../shelf/stepDraws.ts'
import { changeJob, type JobChange, type JobNow } from './jobChange.ts'

/** Why a panel is left out, as it is kept behind its name; `leftOutWords` says it. */
const leftWords: Readonly<Record<PaintRule, string>> = {
  'matte polished': word('matte'),
  'film or plastic compounded': word('film or plastic'),
  'thin paint polished': word('thin paint'),
  'coat over wax': word('waxed'),
  'coat over fresh paint': word('fresh paint'),
  'polish over a coat': word('coated'),
}

/**
 * Leaves the panels out of the treatment, or does them all the same with a reason where that may be. Left out, what is
 * done panel by panel and has not begun takes less time, draws less and costs less, as a smaller scope would have; the
 * rest is laid anew, and the promise stays.
 */
export async function decidePaint(desk: Desk, input: DecideInput): Promise<{ version: number }> {
  const { jobId, treatment, rule, panels, decision } = input
  const reason = input.reason.trim()
  const { version } = await intakeJob(desk.store.read, jobId)
  return changeJob(desk, { id: jobId, version }, async now => {
    const { tx, floor } = now
    await assertOpen(now, input)
    const kept = (of: Tx) =>
      of.paintDecision.create({
        data: { jobId, treatment, rule, panels, decision, reason, at: floor.nowAt, who: desk.who },
      })
    const detail = { treatment, rule, panels: [...panels], reason }
    if (decision === 'do it') return { act: 'done all the same', detail, also: kept }
    const row = found((await jobRows(tx, floor, { id: jobId }))[0], { jobId }, say('This job is not there.'))
    const { change, sold } = await without(now, row, input)
    return {
      ...change,
      act: 'panels left out',
      detail,
      also: async of => {
        await of.jobTreatment.update({ where: { id: sold.id }, data: sold.data })
        await writeStepDraws(of, [jobId], floor.nowAt)
        await kept(of)
      },
    }
  })
}

/** Refuses what is not open any more, or may not be decided so. */
async function assertOpen({ tx, row, floor }: JobNow, input: DecideInput): Promise<void> {
  const { treatment, rule, panels, decision } = input
  if (row.status !== 'booked' && row.status !== 'inShop')
    refuse(
      'over',
      { jobId: row.id },
      say('Job {number} is not open any more; there is nothing to decide.', { number: row.number }),
    )
  const open = forbidden(await intakeJob(tx, row.id), floor.nowAt, await paintJudgedBy(tx)).find(
    each => each.treatment === treatment && each.rule === rule,
  )
  if (!open || open.panels.join() !== panels.join())
    refuse('stale', { panels }, say('This was decided or measured anew meanwhile: look at it again.'))
  if (decision === 'do it') {
    if (!open.mayOverride)
      refuse('never', { decision }, say('{words} Leave these panels out.', { words: open.words }))
    if (input.reason.trim() === '')
      refuse('reason-needed', { reason: input.reason }, say('Write why it is done all the same.'))
  } else if (open.on.length === 0)
    refuse(
      'nothing-left',
      { decision },
      say('Nothing would be left of "{treatment}": book another treatment for this car.', { treatment }),
    )
}

/** The job without these panels: its steps laid anew where they take less, and what the treatment now is and costs. */
async function without({ tx, floor }: JobNow, row: JobRow, { treatment, rule, panels }: DecideInput) {
  const sold = found(
    row.treatments.find(({ name }) => name === treatment),
    { treatment },
    say('This treatment is not there.'),
  )
  const words = panels.map(panel => `${panel} (${leftWords[rule]})`)
  const leftOut = [...(sold.leftOut === '' ? [] : [sold.leftOut]), ...words].join(', ')
  const share = Math.min(sold.share, shareOfPanels(panelsOver(sold.scope as Scope, leftOut)))
  const rows = await tx.treatment.findMany({
    where: { id: { in: row.treatments.map(({ treatmentId }) => treatmentId) } },
    include: withSteps,
  })
  const templates = new Map(rows.map(each => [each.id, treatmentOf(each)]))
  const steps = row.steps.map(step => ({
    ...step,
    shares: row.treatments.flatMap(each =>
      templates.get(each.treatmentId)?.steps.some(of => workKey(of) === workKey(step))
        ? [{ before: each.share, after: each.id === sold.id ? share : each.share }]
        : [],
    ),
  }))
  const minutes = minutesWithout(steps, floor.gridMin)
  const first = row.steps.findIndex((step, i) => minutes[i] !== step.minutes)
  const template = templates.get(sold.treatmentId)
  // What is invoiced already costs what it did.
  const billed = (await tx.invoice.count({ where: { jobId: row.id } })) > 0
  const priceMinor =
    template && !billed
      ? cheaper(
          sold.priceMinor,
          [sold.share, share].map(part => priceShare(template, part, row.vehicle.sizeClass as SizeClass)),
        )
      : sold.priceMinor
  return {
    sold: { id: sold.id, data: { leftOut, share, priceMinor } },
    change: first < 0 ? {} : await shorter(tx, floor, row, { minutes, first }),
  }
}

/** A price whose share of the whole went from one to another. */
function cheaper(priceMinor: number, [before = 1, after = 1]: readonly number[]): number {
  return before > 0 ? Math.round((priceMinor * after) / before) : priceMinor
}

/** The rest of the job from its first shorter step on; nobody is promised anything sooner by it. */
async function shorter(
  tx: Tx,
  floor: JobNow['floor'],
  row: JobRow,
  { minutes, first }: { minutes: readonly number[]; first: number },
): Promise<Pick<JobChange, 'data' | 'insert'>> {
  const steps = row.steps.map((step, i) => ({ ...step, minutes: minutes[i] ?? step.minutes }))
  const laid = await laidAnew(tx, floor, { ...row, steps }, first)
  return {
    data: { plannedHandoverAt: laid.handoverAt },
    insert: of => writePlaces(of, laid.steps.slice(first)),
  }
}
