/** The steps that wait for what is decided about the paint. */
import { say } from '../../domain/language/index.ts'
import type { PaintRule } from '../../domain/paint/index.ts'
import { refuse } from '../../domain/refusal.ts'
import type { Tx } from '../../store/store.ts'
import { forbidden, intakeJob } from './jobPaint.ts'
import { paintJudgedBy } from './measuring.ts'

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
  const open = forbidden(await intakeJob(tx, step.jobId), nowAt, await paintJudgedBy(tx)).find(({ rule }) =>
    rules.includes(rule),
  )
  if (open)
    refuse(
      'paint-forbids',
      { position: step.position },
      say('{words} Decide it on the intake first.', { words: open.words }),
    )
}
