/** What to have ready before a chemical is opened, from what was read off its sheet. It reminds; it clears nothing. */
import { say } from '../language/index.ts'
import { normaliseCode } from './regime.ts'
import type { StorageGroup } from './storage.ts'

export interface Handled {
  /** Hazard codes of the data sheet; null where nobody has read them. */
  readonly hazardCodes: readonly string[] | null
  readonly storageGroup: StorageGroup | null
}

/** One thing to have ready, and where the rule for it is written. */
export interface HandlingNote {
  readonly about: 'fluoride' | 'thioglycolate' | 'breathing' | 'pouring'
  readonly words: string
  readonly source: string
}

/** Statements of harm by breathing; CLP annex III part 1 (H330 to H336). */
const breathed = ['H330', 'H331', 'H332', 'H333', 'H334', 'H335', 'H336']
const burning = ['H224', 'H225', 'H226']

/**
 * The notes that apply to a chemical, most dangerous first; none where nothing is known, since then the caution says to
 * treat it as harmful.
 */
export function handlingNotes({ hazardCodes, storageGroup }: Handled): HandlingNote[] {
  const codes = hazardCodes?.flatMap(code => normaliseCode(code).split('+')) ?? []
  const any = (list: readonly string[]) => list.some(code => codes.includes(code))
  const notes: HandlingNote[] = []
  if (storageGroup === 'fluoride')
    notes.push({
      about: 'fluoride',
      words: say(
        'Face shield over goggles, long gloves and an apron that the sheet names for fluorides. Weak solutions may not hurt at first while they destroy tissue: after any contact rinse at once, follow the first-aid plan (settled with a doctor before the bottle is opened, calcium gluconate gel at hand where the plan asks for it) and get medical help without waiting for pain. A cleaner without fluoride is the better choice.',
      ),
      source: say('CDC MMWR 64(32):874–877, burns from washing cars and trucks; first-aid gel from memory'),
    })
  if (storageGroup === 'thioglycolate')
    notes.push({
      about: 'thioglycolate',
      words: say(
        'Never on or beside an acid or a bleach, not even the rinse of one: poisonous gas. It can sensitise the skin: gloves. Rinse before it dries.',
      ),
      source: say('common practice, no source'),
    })
  if (any(breathed) || any(burning))
    notes.push({
      about: 'breathing',
      words: say(
        'Draw the vapour off where it arises first: extraction and fresh air come before any mask. Where they are not enough, a respirator chosen by the exposure and section 8 of the sheet, fitted to its wearer, its cartridges changed by a written schedule and not by smell.',
      ),
      source: say('29 CFR 1910.134(a)(1) and (d)(3)(iii); the schedule’s paragraph from memory'),
    })
  if (any(burning))
    notes.push({
      about: 'pouring',
      words: say(
        'While it is poured, the two vessels are joined by a bonding wire and the drum is earthed, so that no static spark meets the vapour. No plastic vessel that is not made for it, no flame and no switch near it.',
      ),
      // The rule names category 3 only under 37.8 °C; the code does not tell, so it is asked of all of it.
      source: '29 CFR 1910.106(e)(6)(ii)',
    })
  return notes
}
