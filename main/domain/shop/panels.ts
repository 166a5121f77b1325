/** A car panel by panel: what each is, which products may touch it, and what of a treatment is left over them. */

import { dateOfDay, dayNumber } from '../calendar/index.ts'
import { say, sayKept, word } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import type { Treatment } from './checkTreatment.ts'
import type { CoatingFamily, Finish, PanelFinish, ProductKind, Scope, Stage } from './words.ts'

/** The panels of a car as a painter counts them, each with its hundredths of the paint (common practice, no source). */
const panelShares = [
  [word('Bonnet'), 12],
  [word('Roof'), 12],
  [word('Boot lid'), 8],
  [word('Front bumper'), 9],
  [word('Rear bumper'), 7],
  [word('Left wing'), 7],
  [word('Right wing'), 7],
  [word('Left doors'), 12],
  [word('Right doors'), 12],
  [word('Left quarter'), 7],
  [word('Right quarter'), 7],
] as const
export type PanelName = (typeof panelShares)[number][0]
const shares = Object.fromEntries(panelShares) as Readonly<Record<PanelName, number>>
export const panelNames = Object.keys(shares) as [PanelName, ...PanelName[]]

const panelsOf: Readonly<Record<Scope, readonly PanelName[]>> = {
  whole: panelNames,
  front: ['Bonnet', 'Front bumper', 'Left wing', 'Right wing'],
  top: ['Bonnet', 'Roof'],
}

/** How much of the car that is, said when it is read. */
export const scopeWords: Readonly<Record<Scope, string>> = {
  get whole() {
    return say('Whole car')
  },
  get front() {
    return say('Front end')
  },
  get top() {
    return say('Bonnet and roof')
  },
}

/** A panel that is not as the rest of the car; `since`: the day of its film or respray, null where nobody knows. */
export interface PanelNoted {
  readonly panel: PanelName
  readonly finish: PanelFinish
  readonly since: string | null
}

/** Refuses a panel noted twice, and a respray without its day, which would never be known to have rested. */
export function checkPanels(panels: readonly PanelNoted[], field: string): PanelNoted[] {
  panels.forEach(({ panel, finish, since }, i) => {
    if (panels.findIndex(each => each.panel === panel) < i)
      refuse(
        'panel-twice',
        { [`${field}.${i}.panel`]: panel },
        say('{panel} is noted twice; keep one of them.', { panel: say(panel) }),
      )
    if (finish === 'respray' && since === null)
      refuse(
        'respray-undated',
        { [`${field}.${i}.since`]: since },
        say('Give the day {panel} was resprayed, or call it gloss where that is long ago.', {
          panel: say(panel),
        }),
      )
  })
  return [...panels]
}

/** Days a panel rests before anything goes on it (common practice, no source; the paint's or film's maker decides). */
const restDays: Partial<Record<PanelFinish, number>> = { respray: 30, film: 7, 'matte film': 7 }

const polishable: readonly PanelFinish[] = ['gloss', 'single stage', 'respray']
const paintLike: readonly PanelFinish[] = [...polishable, 'satin', 'matte', 'film', 'matte film']

/** What a product of this kind may touch where its sheet says nothing (common practice, no source). */
export function usualFinishes(kind: ProductKind): readonly PanelFinish[] {
  if (kind === 'compound' || kind === 'polish') return polishable
  return kind === 'coating' || kind === 'topper' ? paintLike : [...paintLike, 'plastic', 'glass', 'wheel']
}

/** What of a product is asked before it goes on a panel. */
export interface PanelProduct {
  readonly kind: ProductKind
  readonly family?: CoatingFamily
  /** What its sheet allows it on; null or left out: as is usual for its kind. */
  readonly finishes?: readonly PanelFinish[] | null
}

/** The stages that are done panel by panel; the rest is done to the car whatever is sold of it. */
const byPanel: ReadonlySet<Stage> = new Set(['correct', 'wipe', 'coat', 'level', 'topper'])

/** What polishes, if only in one place. */
const polishes: ReadonlySet<Stage> = new Set(['test', 'correct'])

export interface CarOver {
  readonly finish: Finish
  readonly panels: readonly PanelNoted[]
  readonly scope: Scope
  /** The day it is asked on, `YYYY-MM-DD`: what has rested by then. */
  readonly today: string
}

export interface LaidOver {
  /** Of the whole paint, 0 to 1: what of its time and draw by the panel is left. 0: no panel is. */
  readonly share: number
  /** It does nothing panel by panel, or to something other than paint: whole whatever part of the paint is asked for. */
  readonly alwaysWhole?: true
  /** The panels asked for that it may not touch, each with its reason as it is kept: `Roof (matte film)`. */
  readonly leftOut: readonly string[]
}

/**
 * The panels of the scope that every product of the treatment may touch. A treatment that does nothing panel by panel,
 * or coats something other than paint, is whole.
 */
export function laidOver(
  { steps }: Pick<Treatment, 'steps'>,
  products: ReadonlyMap<string, PanelProduct>,
  { finish, panels, scope, today }: CarOver,
): LaidOver {
  const own = steps.filter(step => byPanel.has(step.stage) || polishes.has(step.stage))
  const used = own.flatMap(step => products.get(step.productId ?? '') ?? [])
  const coats = used.filter(product => product.kind === 'coating')
  if (own.length === 0 || (coats.length > 0 && coats.every(({ family = 'paint' }) => family !== 'paint')))
    return { share: 1, alwaysWhole: true, leftOut: [] }
  const allowed = [
    ...used.map(({ kind, finishes }) => finishes ?? usualFinishes(kind)),
    ...(own.some(step => polishes.has(step.stage)) ? [polishable] : []),
  ]
  const leftOut: string[] = []
  let hundredths = 0
  for (const panel of panelsOf[scope]) {
    const { finish: own, restsUntil } = panelOn(panel, { finish, panels, today })
    if (!allowed.every(finishes => finishes.includes(own))) leftOut.push(`${panel} (${own})`)
    else if (restsUntil !== null) leftOut.push(`${panel} (${own}${restsWords}${restsUntil})`)
    else hundredths += shares[panel]
  }
  return { share: hundredths / 100, leftOut }
}

/** What a panel is on a day, and until when it rests; null: it has rested. */
export function panelOn(
  panel: PanelName,
  { finish, panels, today }: Omit<CarOver, 'scope'>,
): { readonly finish: PanelFinish; readonly restsUntil: string | null } {
  const noted = panels.find(each => each.panel === panel) ?? { finish, since: null }
  const rest = restDays[noted.finish]
  const until = rest !== undefined && noted.since !== null ? dateOfDay(dayNumber(noted.since) + rest) : null
  return { finish: noted.finish, restsUntil: until !== null && until > today ? until : null }
}

/** How much of the paint these panels are, 0 to 1 (common practice, as `laidOver`). */
export function shareOfPanels(panels: readonly PanelName[]): number {
  return panels.reduce((sum, panel) => sum + shares[panel], 0) / 100
}

/** A step's part of a treatment that is laid over a `share` of the paint. */
export function shareOf({ stage }: { readonly stage: string }, share: number): number {
  return byPanel.has(stage as Stage) ? share : 1
}

/** What the desk is told of a treatment that does not go over the whole car, or that does although a part was asked for. */
export function overWords(name: string, scope: Scope, { share, alwaysWhole, leftOut }: LaidOver): string[] {
  if (alwaysWhole)
    return scope === 'whole'
      ? []
      : [say('"{name}" is done whole: no part of the paint makes it less.', { name })]
  if (share === 1) return []
  const part = say(partWords[scope], { name, share: Math.round(share * 100) })
  const without =
    leftOut.length > 0
      ? ` ${say('It leaves out {leftOut}.', { leftOut: leftOutWords(leftOut.join(', ')) })}`
      : ''
  return [`${part}${without}`]
}

const partWords: Readonly<Record<Scope, string>> = {
  whole: word(
    '"{name}": whole car, {share} % of the paint (common practice); washing and drying stay whole, in time and price.',
  ),
  front: word(
    '"{name}": front end, {share} % of the paint (common practice); washing and drying stay whole, in time and price.',
  ),
  top: word(
    '"{name}": bonnet and roof, {share} % of the paint (common practice); washing and drying stay whole, in time and price.',
  ),
}

const restsWords = ', rests until '

/** What a booking keeps of the panels left out, in the language of the moment. */
export function leftOutWords(leftOut: string): string {
  return leftOut.replaceAll(/([^(),]+) \(([^()]*)\)/g, (_, name: string, why: string) => {
    const [own, until] = why.split(restsWords)
    const panel = sayKept(name.trim())
    const said =
      until === undefined
        ? `${panel} (${sayKept(own)})`
        : say('{panel} ({own}, rests until {restsUntil})', { panel, own: sayKept(own), restsUntil: until })
    return name.startsWith(' ') ? ` ${said}` : said
  })
}

/** The panels of a scope without those that `leftOut` names, as `laidOver` said them when it was sold. */
export function panelsOver(scope: Scope, leftOut: string): PanelName[] {
  return panelsOf[scope].filter(panel => !leftOut.split(', ').some(each => each.startsWith(`${panel} (`)))
}
