/**
 * What the paint forbids: rules from a panel’s finish and state to the steps of a treatment. All of it common practice,
 * no source: the maker of the paint or film and the product’s data sheet decide. It warns and records; it clears nothing.
 */
import { say, word } from '../language/index.ts'
import { type ThicknessUnits, thicknessWords } from '../measure/index.ts'
import type { PanelFinish, PanelName, ProductKind, Stage } from '../shop/index.ts'
import { listWords } from '../words.ts'

export const paintRules = [
  word('matte polished'),
  word('film or plastic compounded'),
  word('thin paint polished'),
  word('coat over wax'),
  word('coat over fresh paint'),
  word('polish over a coat'),
] as const
export type PaintRule = (typeof paintRules)[number]

/** One panel as it stands before the work. */
export interface PanelState {
  readonly panel: PanelName
  readonly finish: PanelFinish
  /** Its thinnest spot, in micrometres, where it is under the floor; null: it is not, or nobody measured. */
  readonly thinUm: number | null
  /** The day until which fresh paint or film rests; null: it has rested. */
  readonly restsUntil: string | null
  readonly waxed: boolean
}

/** A step of a treatment in its order, with the kind of what it uses; null: nothing, or nothing named. */
export interface PaintStep {
  readonly name: string
  readonly stage: Stage
  readonly productKind: ProductKind | null
}

export interface Breach {
  readonly rule: PaintRule
  /** The step that breaks it. */
  readonly step: string
  readonly panels: readonly PanelName[]
  readonly words: string
  /** Whether somebody may do it all the same, with a reason. What ruins the surface for certain may not be done. */
  readonly mayOverride: boolean
}

const matte: readonly PanelFinish[] = ['satin', 'matte', 'matte film']
const soft: readonly PanelFinish[] = ['film', 'matte film', 'plastic']

/**
 * The rules the steps break on these panels, each once, with the panels it is broken on. A panel that may not be
 * polished at all is not named again for being thin. Thickness is said in the shop's `units`.
 */
export function breachesOf(
  steps: readonly PaintStep[],
  panels: readonly PanelState[],
  units: ThicknessUnits,
): Breach[] {
  const found: Breach[] = []
  const add = (
    rule: PaintRule,
    step: PaintStep | undefined,
    hit: readonly PanelState[],
    words: string,
    mayOverride: boolean,
  ) => {
    if (step && hit.length > 0)
      found.push({
        rule,
        step: step.name,
        panels: hit.map(({ panel }) => panel),
        words: `${listWords(hit.map(panel => panelWords(panel, rule, units)))}: ${words}`,
        mayOverride,
      })
  }
  const polishes = steps.find(({ stage }) => stage === 'correct') ?? steps.find(abrades)
  const compounds = steps.find(step => step.productKind === 'compound') ?? polishes
  const coats = steps.find(({ stage }) => stage === 'coat' || stage === 'topper')
  const isMatte = (panel: PanelState) => matte.includes(panel.finish)
  const isSoft = (panel: PanelState) => soft.includes(panel.finish) && !isMatte(panel)
  add(
    'matte polished',
    polishes,
    panels.filter(isMatte),
    say('satin and matte are never machine-polished; the gloss would stay for good.'),
    false,
  )
  add(
    'film or plastic compounded',
    compounds,
    panels.filter(isSoft),
    say('no compound on film or textured plastic; it scours them.'),
    false,
  )
  const thin = panels.filter(panel => panel.thinUm !== null && !isMatte(panel) && !isSoft(panel))
  add(
    'thin paint polished',
    polishes,
    thin,
    say('under the floor; correction may go through the clear coat.'),
    true,
  )
  const stripped = steps.some(
    (step, i) => i < steps.indexOf(coats!) && (step.stage === 'wipe' || abrades(step)),
  )
  if (coats && !stripped)
    add(
      'coat over wax',
      coats,
      panels.filter(({ waxed }) => waxed),
      say('a coating does not bond over wax; strip or polish it first.'),
      true,
    )
  const fresh = panels.filter(({ restsUntil }) => restsUntil !== null)
  add(
    'coat over fresh paint',
    coats,
    fresh,
    say('fresh paint and film rest before anything seals them; ask the painter.'),
    true,
  )
  const coated = steps.findIndex(({ stage }) => stage === 'coat')
  const later = coated === -1 ? undefined : steps.slice(coated + 1).find(abrades)
  add(
    'polish over a coat',
    later,
    panels,
    say('an abrasive polish takes the coat off again; it goes before, abrasive-free care after.'),
    false,
  )
  return found
}

function panelWords(
  { panel, finish, thinUm, restsUntil }: PanelState,
  rule: PaintRule,
  units: ThicknessUnits,
): string {
  if (rule === 'thin paint polished') return `${say(panel)} (${thicknessWords(thinUm!, units)})`
  if (rule === 'coat over fresh paint')
    return say('{panel} (until {restsUntil})', { panel: say(panel), restsUntil })
  return rule === 'matte polished' || rule === 'film or plastic compounded'
    ? `${say(panel)} (${say(finish)})`
    : say(panel)
}

/** Whether it takes some of the paint off: correction, its test spot, or a product that abrades. */
export function abrades({ stage, productKind }: Pick<PaintStep, 'stage' | 'productKind'>): boolean {
  return stage === 'correct' || stage === 'test' || productKind === 'compound' || productKind === 'polish'
}

/** A treatment split where it breaks rules: what it goes on, and what is left out. */
export function splitOf(panels: readonly PanelState[], breaches: readonly Breach[]) {
  const out = new Set(breaches.flatMap(breach => breach.panels))
  const names = panels.map(({ panel }) => panel)
  return { on: names.filter(name => !out.has(name)), leaveOut: names.filter(name => out.has(name)) }
}
