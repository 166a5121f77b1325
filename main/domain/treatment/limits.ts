/** Windows that a step must stay within, whichever way the chain before it goes. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import type { Link } from './chainOf.ts'
import type { CureClock, CureDemand } from './cureClocks.ts'
import type { LaidStep } from './template.ts'

type Mutable<T> = T extends T ? { -readonly [K in keyof T]: T[K] } : never
/** A step while its chain is laid out. */
export type Draft = Mutable<LaidStep>

/** A window that a step's start must stay within, counted from the end of an earlier step of the chain. */
interface Limit {
  readonly at: number
  readonly most: number
  readonly field: string
  readonly words: string
}

/** Minutes that have surely passed between the end of step `from` and the start of step `to`. */
export function elapsed(steps: readonly Draft[], from: number, to: number): number {
  const between = steps.slice(from + 1, to)
  return between.reduce((sum, step) => sum + step.minutes + (step.waitMin ?? 0), steps[to]?.waitMin ?? 0)
}

/** The place of a link in the chain laid out so far. */
export function placeIn(placeOf: ReadonlyMap<Link, number>, link: Link): number {
  const at = placeOf.get(link)
  if (at === undefined) throw new Error(`"${link.template.name}" is waited for before it is laid out`)
  return at
}

export function limitsOf(
  link: Link,
  demands: readonly CureDemand[],
  placeOf: ReadonlyMap<Link, number>,
): Limit[] {
  const limits: Limit[] = []
  for (const { clock, most } of demands)
    if (most !== null)
      limits.push({
        at: clock.at,
        most,
        field: `${link.field}.waitMin`,
        words: windowWords(link, clock, most),
      })
  for (const wait of link.waits)
    if (wait.waitMax !== null)
      limits.push({
        at: placeIn(placeOf, wait.after),
        most: wait.waitMax,
        field: wait.limitField,
        words: say('"{name}" may start at most {waitMax} after "{name2}"', {
          name: link.template.name,
          waitMax: minuteWords(wait.waitMax),
          name2: wait.after.template.name,
        }),
      })
  return limits
}

function windowWords(link: Link, clock: CureClock, most: number): string {
  const { minutes, template } = clock.link
  const layers = say('with {minutes} for "{name}" and {minutes2} for "{name2}"', {
    minutes: minuteWords(minutes),
    name: template.name,
    minutes2: minuteWords(link.minutes),
    name2: link.template.name,
  })
  return most < 0
    ? say('{productName}: {layers}, some panel waits {most} longer than its window is open', {
        productName: clock.productName,
        layers,
        most: minuteWords(-most),
      })
    : say('{productName} allows at most {most} from its coat to "{name}", {layers}', {
        productName: clock.productName,
        most: minuteWords(most),
        name: link.template.name,
        layers,
      })
}

/**
 * Makes sure step `to` starts within the limit whenever the chain's own waits are kept: what is left of the window
 * after the steps between is shared by the starts in it, and work between may not pause at closing.
 */
export function keepWithin(limit: Limit, steps: Draft[], to: number, gridMin: number): void {
  const spare = limit.most - elapsed(steps, limit.at, to)
  if (limit.most < 0)
    refuse(
      'layers-too-long',
      { [limit.field]: limit.most },
      say('{words}; send more people to both layers, or sell the layers on fewer panels.', {
        words: limit.words,
      }),
    )
  if (spare < 0)
    refuse(
      'waits-contradict',
      { [limit.field]: limit.most },
      say(
        '{words}, but what comes between takes {most}; make the window longer, or what comes between shorter.',
        { words: limit.words, most: minuteWords(limit.most - spare) },
      ),
    )
  const within = steps.slice(limit.at + 1, to + 1)
  const starts = within.filter(step => step.kind === 'work').length
  const share = starts === 1 ? spare : Math.floor(spare / starts / gridMin) * gridMin
  for (const step of within) {
    if (step.kind === 'work' && step !== steps[to]) step.split = false
    const most = (step.waitMin ?? 0) + (step.kind === 'work' ? share : 0)
    step.waitMax = Math.min(step.waitMax ?? most, most)
  }
}

export function minuteWords(minutes: number): string {
  const hours = Math.floor(minutes / 60)
  const rest = minutes % 60
  return [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? say('{rest} min', { rest }) : '']
    .filter(Boolean)
    .join(' ')
}
