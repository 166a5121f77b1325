import type { Trail } from './trail.ts'

/** What a conflict teaches. */
export interface Lesson {
  /** The learned clause; its first literal is the one to force, its second the latest of the others. */
  readonly literals: number[]
  /** The level to go back to. */
  readonly level: number
  /** How many levels the literals come from. */
  readonly spread: number
}

const none = Number.NEGATIVE_INFINITY

/**
 * Traces a conflict back to the first single cause on its own level (first unique implication point). Each side is
 * needed from one number on: two literals of a side are the stronger of them.
 */
export class Learner {
  private readonly trail: Trail
  /** Per side the number needed of it, or minus infinity. */
  private readonly need: number[] = []
  /** Called with each side the conflict ran through. */
  onSide: (side: number) => void = () => undefined
  /** Called with each reason used. */
  onReason: (reason: unknown) => void = () => undefined

  constructor(trail: Trail) {
    this.trail = trail
  }

  learn(conflict: readonly number[]): Lesson {
    const { trail, need } = this
    const start = trail.levels.at(-1)!
    const ground = trail.levels[0]!
    const touched = new Set<number>()
    let open = 0
    const ask = (side: number, number: number) => {
      const before = need[side] ?? none
      if (before >= number) return
      const entry = trail.entryOf(side, number)
      if (entry < ground) return
      if (before === none) touched.add(side)
      if (entry >= start && (before === none || trail.entryOf(side, before) < start)) open++
      need[side] = number
      this.onSide(side)
    }
    for (let i = 0; i < conflict.length; i += 2) ask(conflict[i]!, conflict[i + 1]!)
    const why: number[] = []
    let entry = trail.sides.length
    let top = -1
    for (;;) {
      entry--
      const side = trail.sides[entry]!
      const number = need[side] ?? none
      if (number <= trail.olds[entry]!) continue
      if (open === 1) {
        top = side
        break
      }
      open--
      const reason = trail.reasons[entry]!
      this.onReason(reason)
      need[side] = none
      why.length = 0
      reason.explain(side, number, why)
      for (let i = 0; i < why.length; i += 2) ask(why[i]!, why[i + 1]!)
    }
    return this.lesson(touched, top)
  }

  private lesson(touched: ReadonlySet<number>, top: number): Lesson {
    const { trail, need } = this
    const literals = [top ^ 1, 1 - need[top]!]
    const levels = new Set<number>()
    let level = 0
    const kept = [...touched].filter(side => {
      const number = need[side]!
      return side !== top && number !== none && !this.implied(side, number)
    })
    for (const side of kept) {
      const number = need[side]!
      const own = trail.levelOf(trail.entryOf(side, number))
      levels.add(own)
      literals.push(side ^ 1, 1 - number)
      if (own > level) {
        level = own
        const end = literals.length - 2
        ;[literals[2], literals[end]] = [literals[end]!, literals[2]!]
        ;[literals[3], literals[end + 1]] = [literals[end + 1]!, literals[3]!]
      }
    }
    for (const side of touched) need[side] = none
    return { literals, level, spread: levels.size + 1 }
  }

  /** Whether a needed literal follows from other needed ones by its own reason. */
  private implied(side: number, number: number): boolean {
    const { trail, need } = this
    const entry = trail.entryOf(side, number)
    const reason = trail.reasons[entry]
    if (!reason) return false
    const why: number[] = []
    reason.explain(side, number, why)
    const ground = trail.levels[0]!
    for (let i = 0; i < why.length; i += 2) {
      const s = why[i]!
      if ((need[s] ?? none) >= why[i + 1]! && s !== side) continue
      if (trail.entryOf(s, why[i + 1]!) < ground) continue
      return false
    }
    return true
  }
}
