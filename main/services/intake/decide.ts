/** What is decided where the paint forbids a part of what was sold, and the steps that wait for it. */
import { say, word } from '../../domain/language/index.ts'
import type { PaintRule } from '../../domain/paint/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import type { DecideInput } from './inputs.ts'
import { forbidden, intakeJob } from './jobPaint.ts'
import { shopMeasureRules } from './measuring.ts'

/** Why a panel is left out, as it is kept behind its name; `leftOutWords` says it. */
const leftWords: Readonly<Record<PaintRule, string>> = {
  'matte polished': word('matte'),
  'film or plastic compounded': word('film or plastic'),
  'thin paint polished': word('thin paint'),
  'coat over wax': word('waxed'),
  'coat over fresh paint': word('fresh paint'),
  'polish over a coat': word('coated'),
}

/** Leaves the panels out of the treatment, or does them all the same with a reason where that may be. */
export function decidePaint(desk: Desk, input: DecideInput): Promise<void> {
  const { jobId, treatment, rule, panels, decision } = input
  const reason = input.reason.trim()
  return act(desk, async (tx, audit, at) => {
    const job = await intakeJob(tx, jobId)
    if (job.status !== 'booked' && job.status !== 'inShop')
      refuse(
        'over',
        { jobId },
        say('Job {number} is not open any more; there is nothing to decide.', { number: job.number }),
      )
    const { zone } = await shopOf(tx)
    const measured = { zone, rules: await shopMeasureRules(tx) }
    const open = forbidden(job, at, measured).find(each => each.treatment === treatment && each.rule === rule)
    if (!open || open.panels.join() !== panels.join())
      refuse('stale', { panels }, say('This was decided or measured anew meanwhile: look at it again.'))
    if (decision === 'do it') {
      if (!open.mayOverride)
        refuse('never', { decision }, say('{words} Leave these panels out.', { words: open.words }))
      if (reason === '') refuse('reason-needed', { reason }, say('Write why it is done all the same.'))
    } else {
      if (open.on.length === 0)
        refuse(
          'nothing-left',
          { decision },
          say('Nothing would be left of "{treatment}": book another treatment for this car.', { treatment }),
        )
      const sold = found(
        job.treatments.find(({ name }) => name === treatment),
        { treatment },
        say('This treatment is not there.'),
      )
      const words = panels.map(panel => `${panel} (${leftWords[rule]})`)
      await tx.jobTreatment.update({
        where: { id: sold.id },
        data: { leftOut: [...(sold.leftOut === '' ? [] : [sold.leftOut]), ...words].join(', ') },
      })
    }
    await tx.paintDecision.create({
      data: { jobId, treatment, rule, panels, decision, reason, at, who: desk.who },
    })
    audit({
      act: decision === 'do it' ? 'done all the same' : 'panels left out',
      entity: 'job',
      entityId: jobId,
      detail: { treatment, rule, panels: [...panels], reason },
    })
  })
}

const polishing: readonly PaintRule[] = [
  'matte polished',
  'film or plastic compounded',
  'thin paint polished',
  'polish over a coat',
]
const sealing: readonly PaintRule[] = ['coat over wax', 'coat over fresh paint']

/** Which rules hold up which stage. */
const heldUp: Readonly<Record<string, readonly PaintRule[]>> = {
  test: polishing,
  correct: polishing,
  coat: sealing,
  topper: sealing,
}

/** Refuses to begin a step of this stage while the paint forbids it and nobody has decided. */
export async function assertPaintAllows(
  tx: Tx,
  step: { jobId: string; stage: string; position: number },
  nowAt: number,
): Promise<void> {
  const rules = heldUp[step.stage]
  if (!rules) return
  const { zone } = await shopOf(tx)
  const measured = { zone, rules: await shopMeasureRules(tx) }
  const open = forbidden(await intakeJob(tx, step.jobId), nowAt, measured).find(({ rule }) =>
    rules.includes(rule),
  )
  if (open)
    refuse(
      'paint-forbids',
      { position: step.position },
      say('{words} Decide it on the intake first.', { words: open.words }),
    )
}
