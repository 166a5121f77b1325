/** Several treatments made one chain of hands-on steps: stage by stage, shared steps done once. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { type Stage, stages, type TreatmentStep } from '../shop/index.ts'
import { bothHelped } from './help.ts'
import { levelled } from './levelling.ts'
import type { TreatmentTemplate } from './template.ts'

/** A rule a treatment gives for the time from the end of another link of the chain to this one's start. */
export interface LinkWait {
  readonly after: Link
  readonly waitMin: number | null
  readonly waitMax: number | null
  readonly sameBay: boolean
  readonly field: string
  /** The limit's own field. */
  readonly limitField: string
}

/** One hands-on step of the chain: of one treatment or, where several share it, of all of those. */
export interface Link {
  template: TreatmentStep
  /** Hands-on minutes for this vehicle. */
  minutes: number
  /** The treatments it belongs to, by their place in what was given. */
  readonly treatments: Set<number>
  readonly waits: LinkWait[]
  /** The path of the step in what was given, for refusals: "treatments.0.steps.3". */
  readonly field: string
  /** Which of a treatment's steps of this name it is, so that a second wash is not taken for the first. */
  readonly turn: number
}

/** Stages whose steps are the same work whichever treatment asks for it. Correction and coats are not: two are two. */
const shared: ReadonlySet<Stage> = new Set(['prepare', 'dry', 'test', 'rinse', 'wipe', 'finish'])

/**
 * The chain of `treatments`: stages in order, and in a stage the treatments in the order given. Steps of the shared
 * stages with the same name, capability and skill are merged; the longest is kept, with the stricter of each other
 * rule. `minutesOf` says how long a step takes on this vehicle; a step of no minutes is left out.
 * @throws Refusal where two treatments share steps in opposite orders and one of them waits for the other.
 */
export function chainOf(
  treatments: readonly TreatmentTemplate[],
  minutesOf: (step: TreatmentStep) => number,
): Link[] {
  const byStage = new Map<Stage, Link[]>(stages.map(stage => [stage, []]))
  treatments.forEach((treatment, t) => {
    let before: Link | null = null
    const turns = new Map<string, number>()
    const next = new Map<Stage, number>()
    levelled(treatment.steps).forEach(({ step: template, at: i }) => {
      const minutes = minutesOf(template)
      if (minutes === 0) return
      const links = byStage.get(template.stage)!
      const key = keyOf(template)
      const turn = turns.get(key) ?? 0
      turns.set(key, turn + 1)
      const field = `treatments.${t}.steps.${i}`
      // What may not wait for its next is done anew for each of them.
      const isShared = shared.has(template.stage) && template.nextWithinMin == null
      let at = isShared ? links.findIndex(link => keyOf(link.template) === key && link.turn === turn) : -1
      if (at >= 0) merge(links[at]!, template, minutes)
      else {
        // A step of its own goes right behind its treatment's step before it, else ahead of the next one shared.
        at = isShared
          ? (next.get(template.stage) ?? placeBefore(links, treatment.steps.slice(i)))
          : links.length
        links.splice(at, 0, { template, minutes, treatments: new Set(), waits: [], field, turn })
      }
      const link: Link = links[at]!
      link.treatments.add(t)
      if (before && (template.waitMin !== null || template.waitMax !== null || template.sameBay))
        link.waits.push({ ...ruleOf(template), after: before, field, limitField: `${field}.waitMax` })
      next.set(template.stage, Math.max(next.get(template.stage) ?? 0, at + 1))
      before = link
    })
  })
  const chain = besideNext(stages.flatMap(stage => byStage.get(stage)!))
  checkOrder(chain)
  return chain
}

/**
 * A step whose next may not wait long goes right before it: the wheels are wiped, coated, and then the paint is wiped.
 * Its limit is for the first step of its treatment that goes on it.
 */
function besideNext(links: readonly Link[]): Link[] {
  const chain = [...links]
  for (const link of links) {
    const most = link.template.nextWithinMin ?? null
    if (most === null) continue
    const from = chain.indexOf(link)
    const to = chain.findIndex((each, i) => i > from && !each.treatments.isDisjointFrom(link.treatments))
    if (to < 0) continue
    const next = chain[to]!
    const limitField = `${link.field}.nextWithinMin`
    next.waits.push({
      after: link,
      waitMin: null,
      waitMax: most,
      sameBay: false,
      field: link.field,
      limitField,
    })
    chain.splice(from, 1)
    chain.splice(to - 1, 0, link)
  }
  return chain
}

/** Where the first of `steps` that is there already stands; the end when none is. */
function placeBefore(links: readonly Link[], steps: readonly TreatmentStep[]): number {
  const keys = new Set(steps.map(keyOf))
  const at = links.findIndex(link => keys.has(keyOf(link.template)))
  return at < 0 ? links.length : at
}

function ruleOf({ waitMin, waitMax, sameBay }: TreatmentStep) {
  return { waitMin, waitMax, sameBay }
}

function keyOf({ stage, name, needs, skill }: TreatmentStep): string {
  return [stage, name.trim().toLowerCase(), needs, skill].join('\n')
}

function merge(link: Link, other: TreatmentStep, minutes: number): void {
  const longer = minutes > link.minutes ? other : link.template
  link.template = {
    ...longer,
    crew: Math.max(link.template.crew, other.crew),
    help: bothHelped(link.template, other),
    asks: [...(link.template.asks ?? []), ...(other.asks ?? [])],
    splittable: link.template.splittable && other.splittable,
    nextWithinMin: link.template.nextWithinMin ?? null,
    missed: link.template.missed ?? null,
  }
  link.minutes = Math.max(link.minutes, minutes)
}

function checkOrder(chain: readonly Link[]): void {
  const place = new Map(chain.map((link, i) => [link, i]))
  for (const link of chain)
    for (const wait of link.waits)
      if (place.get(wait.after)! > place.get(link)!)
        refuse(
          'waits-contradict',
          { [wait.field]: link.template.name },
          say(
            '"{name}" goes with "{name2}" before it, and another treatment has them the other way round; give both treatments the same order.',
            { name: link.template.name, name2: wait.after.template.name },
          ),
        )
}
