/**
 * What to mind with the machine in hand, for the steps of a chain. Common practice, no source: the makers of the machine,
 * the pad and the compound decide, and local codes for work with tools.
 */
import { abrades, type PaintStep } from './forbids.ts'

/** The cautions that apply to these steps, in the order of the work; none where no machine touches the paint. */
export function toolCautions(steps: readonly Pick<PaintStep, 'stage' | 'productKind'>[]): string[] {
  if (!steps.some(abrades)) return []
  const coated = steps.some(({ stage }) => stage === 'coat')
  return [
    'Goggles, a dust mask for dry work, hair and sleeves tied back; both hands on the machine, its lead over the shoulder.',
    'Measure first. Tape edges, ridges, trim and badges: that is where paint burns through. Work up to a ridge, never balance on it.',
    'Rotary: keep the pad flat. Tilt it 15 to 20° only where a 5 or 6 inch pad must lie in the hollow of a body line.',
    'Smaller areas get a smaller machine and pad. Plastic and edges heat up fastest: keep moving, feel the panel, stop when it is hot.',
    'Try the mildest pad and polish on one spot first, and measure again after it.',
    ...(coated
      ? [
          'An abrasive primer polish goes before the coat; once it has cured only abrasive-free care touches it.',
        ]
      : []),
    'The machine’s and the product’s own instructions decide.',
  ]
}
