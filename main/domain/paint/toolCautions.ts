/**
 * What to mind with the tools in hand, for the steps of a chain. Common practice, no source: the makers of the machine,
 * the pad, the lamp and the compound decide, and local codes for work with tools.
 */
import { say, word } from '../language/index.ts'
import { abrades, type PaintStep } from './forbids.ts'

/** The cautions that apply to these steps, each once; none where no machine touches the paint and nothing is laid. */
export function toolCautions(steps: readonly Pick<PaintStep, 'stage' | 'productKind'>[]): string[] {
  const polished = steps.some(abrades)
  const coated = steps.some(({ stage }) => stage === 'coat')
  if (!polished && !coated) return []
  return [
    ...(polished ? machineCare.map(care => say(care)) : []),
    ...(polished && coated
      ? [
          say(
            'An abrasive primer polish goes before the coat; once it has cured only abrasive-free care touches it.',
          ),
        ]
      : []),
    ...(coated
      ? [say('Lamps and heaters: never near solvent vapour; let the panel cool before it is touched.')]
      : []),
    say('The tool’s and the product’s own instructions decide.'),
  ]
}

const machineCare: readonly string[] = [
  word(
    'Goggles, a dust mask for dry work, hair and sleeves tied back; both hands on the machine, its lead over the shoulder. Unplugged, or its battery out, before a pad is changed.',
  ),
  word(
    'Measure first. Tape edges, ridges, trim and badges: that is where paint burns through. Work up to a ridge, never balance on it.',
  ),
  word(
    'Rotary: keep the pad flat. Tilt it 15 to 20° only where a 5 or 6 inch pad must lie in the hollow of a body line.',
  ),
  word(
    'Smaller areas get a smaller machine and pad. Plastic and edges heat up fastest: keep moving, feel the panel, stop when it is hot.',
  ),
  word('Try the mildest pad and polish on one spot first, and measure again after it.'),
]
