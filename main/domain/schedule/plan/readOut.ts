import { minuteAt } from '../prepare.ts'
import type { Plan, PlannedStep } from '../types.ts'
import { findCircle } from './exchange.ts'
import { holds, type Literal } from './literals.ts'
import type { Model } from './model.ts'
import type { Block, Hand } from './places.ts'
import type { FloorPlan } from './types.ts'

/** A stay with its times read from the solver. */
interface Stood {
  readonly blocks: Block[]
  readonly group: number
  readonly from: number
  to: number
  bay: string
}

/** Cars that would have to change places: a clause that forbids it. */
export interface Exchange {
  readonly clause: number[]
}

/** The plan of the values now in the solver, with bays and people named; or the exchange of places it would need. */
export function readOut(model: Model): { readonly plan: FloorPlan } | Exchange {
  const { solver, floor, chains } = model
  const value = (x: number) => solver.trail.least(x)
  const stays = staysNow(model)
  nameBays(model, stays)
  const exchange = findExchange(model, stays)
  if (exchange) return exchange
  const people = namePeople(model)
  const plan: Record<string, Plan> = {}
  chains.forEach(({ job, steps, last, homes }, car) => {
    plan[job.id] = {
      steps: steps.map(step => {
        const stay = stays.find(one =>
          one.blocks.some(block => block.car === car && block.steps.includes(step)),
        )!
        return {
          bay: stay.bay,
          start: minuteAt(floor, step.starts[value(step.x)]!),
          end: step.ends[value(step.x)]!,
          crew: (people.get(step.x)?.crew ?? []).sort(),
          ...(people.get(step.x)?.help.length && { help: people.get(step.x)!.help.sort() }),
        } satisfies PlannedStep
      }),
      handover: minuteAt(floor, homes[value(last.x)]!),
    }
  })
  return { plan }
}

function chosen(model: Model, from: readonly Literal[]): number {
  return from.findIndex(literal => holds(model.solver, literal))
}

/** The stays, those of one car in one group after each other joined: it need not move. */
function staysNow(model: Model): Stood[] {
  const { trail } = model.solver
  const stays: Stood[] = []
  for (const block of model.blocks) {
    const group = chosen(model, block.from)
    const from = block.start.starts[trail.least(block.start.x)]!
    const to = block.ends[trail.least(block.end.x)]!
    const last = stays.at(-1)
    if (last && last.blocks[0]!.car === block.car && last.group === group) {
      last.blocks.push(block)
      last.to = to
    } else stays.push({ blocks: [block], group, from, to, bay: '' })
  }
  return stays
}

/** Whether the car comes from another bay. */
function isTransfer(stays: readonly Stood[], stay: Stood): boolean {
  const before = stays[stays.indexOf(stay) - 1]
  return before !== undefined && before.blocks[0]!.car === stay.blocks[0]!.car
}

/**
 * A bay for each stay. Cars that come from another bay choose before those that come in, and take a bay that has been
 * empty for a while where there is one: that leaves the fewest waiting for each other.
 */
function nameBays(model: Model, stays: readonly Stood[]): void {
  model.bays.forEach(({ ids }, group) => {
    const until = new Map(ids.map(id => [id, Number.NEGATIVE_INFINITY]))
    const here = stays.filter(stay => stay.group === group)
    here.sort((a, b) => a.from - b.from || Number(isTransfer(stays, b)) - Number(isTransfer(stays, a)))
    for (const stay of here) {
      const free = ids.filter(id => until.get(id)! <= stay.from)
      stay.bay = free.find(id => until.get(id)! < stay.from) ?? free[0]!
      until.set(stay.bay, stay.to)
    }
  })
}

/** Circles of cars that enter each other's bays at one minute, opened where bays can be traded inside a group. */
function findExchange(model: Model, stays: readonly Stood[]): Exchange | undefined {
  for (;;) {
    const transfers = stays
      .filter(stay => isTransfer(stays, stay))
      .map(stay => ({ stay, at: stay.from, from: stays[stays.indexOf(stay) - 1]!.bay, to: stay.bay }))
    const circle = findCircle(transfers)?.map(({ stay }) => stay)
    if (!circle) return undefined
    // Cars entering bays of one group at one minute may trade them; with one outside the circle, that opens it.
    const trade = circle
      .flatMap(inside => transfers.map(({ stay }) => [inside, stay] as const))
      .find(([a, b]) => b.from === a.from && b.group === a.group && !circle.includes(b))
    if (!trade) return forbid(model, stays, circle)
    const [inside, outside] = trade
    const { bay } = inside
    inside.bay = outside.bay
    outside.bay = bay
  }
}

/** "Not these cars in these groups at this minute." */
function forbid(model: Model, stays: readonly Stood[], circle: readonly Stood[]): Exchange {
  const at = circle[0]!.from
  const { trail } = model.solver
  const groups = new Set(circle.map(stay => stay.group))
  const clause: number[] = []
  const differ = (side: number, number: number) => clause.push(side ^ 1, 1 - number)
  const same = (x: number) => {
    differ(2 * x, trail.least(x))
    differ(2 * x + 1, -trail.least(x))
  }
  for (const stay of stays) {
    if (stay.from > at || stay.to < at || !groups.has(stay.group)) continue
    for (const block of stay.blocks) {
      const literal = block.from[stay.group]!
      if (typeof literal !== 'boolean') differ(literal[0], literal[1])
      same(block.start.x)
      same(block.end.x)
    }
  }
  return { clause }
}

interface People {
  readonly crew: string[]
  readonly help: string[]
}

/** Who is in the team of each step and who helps, by the step's variable. */
function namePeople(model: Model): Map<number, People> {
  const { trail } = model.solver
  const people = new Map<number, People>()
  model.crew.forEach(({ ids }, group) => {
    const until = new Map(ids.map(id => [id, Number.NEGATIVE_INFINITY]))
    const start = ({ step, starts }: Hand) => starts[trail.least(step.x)]!
    const here = model.hands.filter(hand => chosen(model, hand.from) === group)
    for (const hand of here.sort((a, b) => start(a) - start(b))) {
      const id = ids.find(one => until.get(one)! <= start(hand))!
      until.set(id, hand.ends[trail.least(hand.step.x)]!)
      const named = people.get(hand.step.x) ?? { crew: [], help: [] }
      people.set(hand.step.x, named)
      named[hand.helps ? 'help' : 'crew'].push(id)
    }
  })
  return people
}
