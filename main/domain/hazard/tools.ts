import type { Stage } from '../shop/index.ts'

/**
 * What to beware of with the tools of a stage of work. Common practice, no source: the tool's own instructions and
 * local rules decide.
 */
const toolCare: Partial<Readonly<Record<Stage, readonly string[]>>> = {
  correct: [
    'Machine polisher: eye protection, sleeves and cords away from the spindle, unplugged or its battery out before a pad is changed.',
    'Pad flat and moving: a tilted or resting pad burns edges and ridges, which are taped. Feel the panel for heat.',
  ],
  coat: ['Lamps and heaters: never near solvent vapour; let the panel cool before it is touched.'],
}

/** The cautions for the stages a job goes through, each once. */
export function toolCautions(stages: readonly Stage[]): string[] {
  return [...new Set(stages)].flatMap(stage => toolCare[stage] ?? [])
}
