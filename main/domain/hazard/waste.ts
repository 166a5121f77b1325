/**
 * What becomes of what is left after the work. The shop writes its own rule for each stream; these say what a stream is, which
 * kinds of product make it, and what to beware of. The data sheet (section 13), the local code and the waste carrier decide.
 */
import { say, word } from '../language/index.ts'
import type { ProductKind } from '../shop/index.ts'

export const WASTE_STREAMS = ['solventCloths', 'uncuredResidue', 'washWater'] as const
export type WasteStream = (typeof WASTE_STREAMS)[number]

export interface WasteNote {
  readonly title: string
  readonly caution: string
  readonly source: string
}

export const wasteNotes: Readonly<Record<WasteStream, WasteNote>> = {
  solventCloths: {
    title: word('Cloths wet with solvent or oil'),
    caution: word(
      'They can heat up by themselves and catch fire, hours later. Into a closed metal container that is marked, never in a heap, a pocket or the bin; emptied as your local code and your waste carrier say.',
    ),
    source: word(
      'covered fire-resistant containers: 29 CFR 1926.252(e), from memory; heating up by itself: common practice, no source',
    ),
  },
  uncuredResidue: {
    title: word('Coating that has not cured'),
    caution: word(
      'Closed and labelled, apart from water, acids and alkalis: some react and build up pressure. Never down a drain. Applicators harden and are thrown away as the data sheet says.',
    ),
    source: word('common practice, no source'),
  },
  washWater: {
    title: word('Wash and rinse water'),
    caution: word(
      'Never into a storm drain or onto the ground. Where it may go, through which separator, is for your local code and your water company to say.',
    ),
    source: word('common practice, no source'),
  },
}

/** What a stream is, in the language of the moment. */
export function wasteNoteOf(stream: WasteStream): WasteNote {
  const { title, caution, source } = wasteNotes[stream]
  return { title: say(title), caution: say(caution), source: say(source) }
}

const ofKind: Readonly<Record<ProductKind, readonly WasteStream[]>> = {
  wash: ['washWater'],
  decontaminant: ['washWater'],
  compound: ['washWater'],
  polish: ['washWater'],
  wipe: ['solventCloths'],
  coating: ['solventCloths', 'uncuredResidue'],
  topper: ['solventCloths', 'uncuredResidue'],
  consumable: [],
}

/** The streams that work with these kinds of product makes, each once, the most dangerous first. */
export function wasteStreamsOf(kinds: Iterable<ProductKind>): WasteStream[] {
  const made = new Set([...kinds].flatMap(kind => ofKind[kind]))
  return WASTE_STREAMS.filter(stream => made.has(stream))
}
