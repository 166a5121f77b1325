/** What a bay offers beside the work it is good for, and the sets of it that a step asks for. */
import { say, word } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { checkText } from './text.ts'

/** What a bay may offer; a shop adds names of its own. Inside the app a name is its own key. */
export const bayFeatures = [
  word('dry'),
  word('heated'),
  word('dust-isolated'),
  word('inspection light'),
  word('extraction'),
  word('lift'),
] as const

const mostOffers = 20
const joint = ' + '

/**
 * Names as kept: small letters, each once, in alphabetical order. Refuses more than 20, one over 40 characters, and one
 * with a `+`, which joins them.
 */
export function checkOffers(names: readonly string[], field: string): string[] {
  if (names.length > mostOffers)
    refuse(
      'offers-many',
      { [field]: names.length },
      say('{names} are more than anybody keeps apart; name {mostOffers} or fewer.', {
        names: names.length,
        mostOffers,
      }),
    )
  const kept = names.map(name => checkText(name, field, say('What the bay offers'), 40).toLowerCase())
  const joined = kept.find(name => name.includes('+'))
  if (joined !== undefined)
    refuse('offer-bad', { [field]: joined }, say('Name "{joined}" without a plus, or as two.', { joined }))
  return [...new Set(kept)].sort()
}

/** A step's needs in the one word the scheduler compares: `clean`, or `clean + inspection light + lift`. */
export function needsKey(needs: string, asks: readonly string[] = []): string {
  return [needs, ...[...new Set(asks)].filter(ask => ask !== needs).sort()].join(joint)
}

/** The single needs of such a word. */
export function needsOf(key: string): string[] {
  return key.split(joint)
}

/** Whether a bay with all that it `has` meets them. */
export function meetsNeeds(has: readonly string[], key: string): boolean {
  return needsOf(key).every(need => has.includes(need))
}
