/** Levelling: a fresh layer is evened out, and looked over under the lamp, panel by panel while it is wet. */
import { say } from '../language/index.ts'
import { type SizeClass, sizeClasses, type TreatmentStep } from '../shop/index.ts'
import { bothHelped } from './help.ts'

export interface Placed {
  readonly step: TreatmentStep
  /** Its place in the treatment as given. */
  readonly at: number
}

/**
 * The steps of a treatment with each levelling made part of the layer before it: one person goes round the car once,
 * and each panel is laid, levelled and checked before the next, minutes apart. A step of its own would leave the first
 * panel until the last is laid, and after tack-free nothing can be levelled. Minutes of both are added; a size the
 * layer is left out for is not levelled. Common practice, no source; the data sheet says how soon.
 */
export function levelled(steps: readonly TreatmentStep[]): Placed[] {
  const placed: Placed[] = []
  for (const [at, step] of steps.entries()) {
    const layer = placed.at(-1)
    if (step.stage !== 'level') placed.push({ step, at })
    else if (layer?.step.stage === 'coat')
      placed[placed.length - 1] = { ...layer, step: together(layer.step, step) }
  }
  return placed
}

function together(layer: TreatmentStep, level: TreatmentStep): TreatmentStep {
  const minutes = (size: SizeClass) =>
    layer.minutes[size] === 0 ? 0 : layer.minutes[size] + level.minutes[size]
  const both = {
    ...layer,
    crew: Math.max(layer.crew, level.crew),
    help: bothHelped(layer, level),
    minutes: Object.fromEntries(sizeClasses.map(size => [size, minutes(size)])) as Record<SizeClass, number>,
  }
  // Read with their recipes, both draw.
  const draws = [layer, level].flatMap(step => ('draws' in step ? (step.draws as unknown[]) : []))
  return 'draws' in layer ? Object.assign(both, { draws }) : both
}

/** What is said of each layer that is levelled, for whoever lays it. */
export function levellingNotes(steps: readonly TreatmentStep[]): string[] {
  return steps.flatMap(({ stage, name }, i) =>
    stage === 'level' && steps[i - 1]?.stage === 'coat'
      ? [
          say(
            '"{name}" includes "{name2}": each panel is levelled and looked over under the lamp while it is wet, minutes after it is laid (common practice; its data sheet says how soon).',
            { name: steps[i - 1]!.name, name2: name },
          ),
        ]
      : [],
  )
}
