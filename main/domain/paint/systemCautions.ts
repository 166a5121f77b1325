/**
 * What the paint system asks of whoever polishes it. Common practice, no source: the maker of the paint decides, and a
 * spot tried first tells more than any file.
 */
import { say, word } from '../language/index.ts'
import type { PaintSystem } from '../shop/index.ts'
import { abrades, type PaintStep } from './forbids.ts'

const words: Readonly<Record<PaintSystem, readonly string[]>> = {
  'clear-coated': [],
  'single-stage': [
    word(
      'Single-stage paint: the pad takes on its colour. That is no clear coat going through; clean or change pads often, and keep them off other colours.',
    ),
    word(
      'There is no clear coat to spare: every micrometre taken off is colour. Take less than the estimate, and measure after each pass.',
    ),
  ],
  unknown: [
    word(
      'Nobody has noted whether this paint has a clear coat: try a hidden spot with a white pad first. A coloured pad means single-stage paint; note it on the car.',
    ),
  ],
}

/** The cautions of a paint system for these steps; none where nothing takes paint off. */
export function systemCautions(
  paint: PaintSystem,
  steps: readonly Pick<PaintStep, 'stage' | 'productKind'>[],
): string[] {
  return steps.some(abrades) ? words[paint].map(each => say(each)) : []
}
