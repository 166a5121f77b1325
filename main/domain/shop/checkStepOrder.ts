/** What the order of a treatment's steps may not say, and what a step that came too late must. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { type MissedWork, type Stage, stages, stageWords } from './words.ts'

/** Ten days. */
export const longestStepMin = 10 * 24 * 60

interface OrderedStep {
  readonly name: string
  readonly stage: Stage
  readonly productId: string | null
  readonly nextWithinMin?: number | null
  readonly missed?: MissedWork | null
  readonly missedMin?: number | null
}

/** A limit without its cost would leave the crew with a car nobody knows what to do with. */
export function checkMissed({ name, stage, nextWithinMin, missed, missedMin }: OrderedStep, field: string) {
  const least = missed === 'abrade' || missed === 'redo' ? 1 : 0
  const minutes = missedMin ?? 0
  if (nextWithinMin != null && !missed)
    refuse(
      'missed-unsaid',
      { [`${field}.missed`]: null },
      say(
        'Say what is done where the step after "{name}" comes too late: the same again, abrade, or take off and redo.',
        { name },
      ),
    )
  if (missed === 'again' && (stage === 'coat' || stage === 'topper'))
    refuse(
      'missed-bad',
      { [`${field}.missed`]: missed },
      say(
        '"{name}" lays something: laying it again on what is too old to coat holds no better; abrade it, or redo it.',
        { name },
      ),
    )
  if (!Number.isInteger(minutes) || minutes < least || minutes > longestStepMin)
    refuse(
      'duration-bad',
      { [`${field}.missedMin`]: minutes },
      say(
        '{minutes} minutes is no time that takes; give whole minutes from 1 to {longestStepMin} (ten days).',
        { minutes, longestStepMin },
      ),
    )
}

/**
 * The chain of a car's visit is laid out stage by stage, so a treatment says its steps in that order too. A levelling
 * belongs to the layer it follows.
 */
export function checkStageOrder(before: OrderedStep | undefined, step: OrderedStep, field: string) {
  if (step.stage === 'level') {
    if (before?.stage === 'coat' && step.productId === null) return
    refuse(
      before?.stage === 'coat' ? 'product-misplaced' : 'stage-order',
      { [`${field}.${before?.stage === 'coat' ? 'productId' : 'stage'}`]: step.stage },
      say(
        '"{name}" levels the coat laid right before it, while it is wet, with nothing of its own: put it behind its coat step without a product, or change its stage.',
        { name: step.name },
      ),
    )
  }
  if (before && placeOf(step.stage) < placeOf(before.stage))
    refuse(
      'stage-order',
      { [`${field}.stage`]: step.stage },
      say('A {stage} step comes before every {stage2} step; move it up, or change its stage.', {
        stage: stageWords(step.stage),
        stage2: stageWords(before.stage),
      }),
    )
}

/** The next layer follows the levelling of the one before. */
function placeOf(stage: Stage): number {
  return stages.indexOf(stage === 'level' ? 'coat' : stage)
}
