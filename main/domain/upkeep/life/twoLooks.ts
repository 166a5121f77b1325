/**
 * Look, decontamination wash, look again: what a coating or topper does with water before and after, panel by panel. Dirt
 * that lies on it hides it, so only the second look tells clogged from gone. Gloss says nothing of it: that is the
 * paint's. Common practice, no source; a product's own sheet may say how it is tested.
 */
import { say, word } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'

/** Those that lie flat take the sun and the standing water, and go first. */
export const horizontalPanels = [word('bonnet'), word('roof'), word('boot lid')] as const
export const uprightPanels = [word('front'), word('left side'), word('right side'), word('rear')] as const
export const lookPanels = [...horizontalPanels, ...uprightPanels] as const
export type LookPanel = (typeof lookPanels)[number]

/** What water does on it: tight beads that run off, flat ones that hang, or a film. */
export const waterLooks = ['strong', 'weak', 'none'] as const
export type WaterLook = (typeof waterLooks)[number]

export interface PanelLook {
  readonly panel: LookPanel
  readonly before: WaterLook
  /** Null: not washed yet. */
  readonly after: WaterLook | null
}

/** `unknown`: not strong, and not washed yet, so nobody knows whether it is only clogged. */
export type PanelFound = 'working' | 'restored' | 'clogged' | 'weak' | 'gone' | 'unknown'

/** What two looks at one panel say. A wash brings nothing back that is gone, so the second look decides. */
export function panelFound({ before, after }: Pick<PanelLook, 'before' | 'after'>): PanelFound {
  if (after === null) return before === 'strong' ? 'working' : 'unknown'
  if (after === 'none') return 'gone'
  if (after === 'strong') return before === 'strong' ? 'working' : 'restored'
  return before === 'none' ? 'clogged' : 'weak'
}

export interface Found {
  /** Of the panels that decide: the flat ones, or the upright where no flat one was looked at. */
  readonly working: boolean
  /** Each panel that decides was looked at again after its wash: a life may be learned from it. */
  readonly secondLook: boolean
  /** The flat panels and the upright ones, each kind of find with its panels, in words. */
  readonly words: string
}

/**
 * The panels of one inspection read together. It counts as gone when at least half of the panels that decide are; a
 * panel not washed yet counts as it looks.
 * @throws Refusal where nothing was looked at, or one panel twice.
 */
export function foundOn(looks: readonly PanelLook[]): Found {
  if (looks.length === 0)
    refuse('nothing-found', { panels: [] }, say('Say what at least one panel looked like before the wash.'))
  const twice = looks.find((look, i) => looks.findIndex(each => each.panel === look.panel) !== i)
  if (twice)
    refuse(
      'panel-twice',
      { panels: twice.panel },
      say('The {panel} is there twice; keep one of them.', { panel: say(twice.panel) }),
    )
  const flat = looks.filter(look => isFlat(look.panel))
  const upright = looks.filter(look => !isFlat(look.panel))
  const deciding = flat.length > 0 ? flat : upright
  const gone = deciding.filter(({ before, after }) => (after ?? before) === 'none').length
  return {
    working: gone * 2 < deciding.length,
    // The upright panels outlast the flat ones: a life learned from them alone would be too long.
    secondLook: flat.length > 0 && flat.every(look => look.after !== null),
    words: [groupWords(say('flat||panels'), flat), groupWords(say('upright||panels'), upright)]
      .filter(Boolean)
      .join('; '),
  }
}

function isFlat(panel: LookPanel): boolean {
  return horizontalPanels.some(each => each === panel)
}

const foundWords: Record<PanelFound, string> = {
  working: word('working'),
  restored: word('restored by the wash'),
  clogged: word('clogged still: decontaminate again'),
  weak: word('weak'),
  gone: word('gone'),
  unknown: word('clogged or gone: wash and look again'),
}

function groupWords(name: string, looks: readonly PanelLook[]): string {
  if (looks.length === 0) return ''
  const byFound = Map.groupBy(looks, panelFound)
  const parts = [...byFound].map(
    ([found, same]) => `${same.map(look => say(look.panel)).join(', ')} ${say(foundWords[found])}`,
  )
  return `${name}: ${parts.join('; ')}`
}
