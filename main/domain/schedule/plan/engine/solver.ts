import type { LayParts } from '../parts.ts'
import { Clause, Clauses } from './clauses.ts'
import { Heap } from './heap.ts'
import { Learner, type Lesson } from './learn.ts'
import { Trail, type Watcher } from './trail.ts'

/**
 * What one run came to: a solution, a proof that there is none under the assumptions, or no answer in its limit;
 * `paused`: it has worked for a while and goes on where it is with `goOn`.
 */
export type Outcome = 'found' | 'none' | 'limit' | 'paused'

/** As many wakings of propagators as some hundredths of a second are good for. */
const pauseAfter = 8_000

type SolverParts = Pick<LayParts, 'learning' | 'activity'>

/**
 * Search over whole variables by propagation, clause learning and restarts (lazy clause generation). Deterministic:
 * the same model and calls give the same answers.
 */
export class Solver {
  readonly trail = new Trail()
  /** Conflicts so far. */
  conflicts = 0
  /** Per variable the value to try first; undefined where none is known. */
  readonly guide: (number | undefined)[] = []
  private readonly clauses = new Clauses()
  private readonly heap = new Heap()
  private readonly learner = new Learner(this.trail)
  /** Watchers by side: the quick ones run at once, the slow ones when nothing quick is left. */
  private readonly quick: Watcher[][] = []
  private readonly slow: Watcher[][] = []
  private readonly waiting: Watcher[] = []
  private readonly isWaiting = new Set<Watcher>()
  private readonly parts: SolverParts
  private sound = true
  private learnedLimit = 4000
  /** So much of what is assumed is known to hold. */
  private assumedTrue = 0
  /** What the present run assumes, at how many conflicts it ends, and how often anything was woken in it. */
  private assumed: readonly number[] = []
  private until = 0
  private woken = 0

  constructor(parts: SolverParts) {
    this.parts = parts
    if (parts.activity) this.learner.onSide = side => this.heap.bump(side >> 1)
    this.learner.onReason = reason => {
      if (reason instanceof Clause) reason.used = this.conflicts
    }
  }

  /** A variable from `least` to `most`, tried at `guide` first. */
  variable(least: number, most: number, guide?: number): number {
    const x = this.trail.add(least, most)
    this.guide[x] = guide
    // Where cars stand and who comes first says nearly all; then most starts follow, so they are decided last.
    this.heap.add(x, most - least > 1 ? Number.NEGATIVE_INFINITY : 0)
    return x
  }

  /** Wakes the watcher whenever one of the sides grows; the slow ones wait until nothing quick is left to do. */
  watch(watcher: Watcher, sides: readonly number[], slow = false): void {
    const lists = slow ? this.slow : this.quick
    for (const side of new Set(sides)) {
      const list = lists[side]
      if (list) list.push(watcher)
      else lists[side] = [watcher]
    }
    if (slow) this.wait(watcher)
    else if (!watcher.wake(this.trail)) this.sound = false
  }

  /** "At least one of the literals"; takes all decisions back. */
  clause(literals: readonly number[]): void {
    this.back(0)
    const open: number[] = []
    for (let i = 0; i < literals.length; i += 2) {
      const side = literals[i]!
      const number = literals[i + 1]!
      if (this.trail.isTrue(side, number)) return
      if (!this.trail.isFalse(side, number)) open.push(side, number)
    }
    if (open.length === 0) this.sound = false
    else if (open.length === 2) this.fix(open[0]!, open[1]!)
    else this.clauses.add(new Clause(open, false))
  }

  /** A literal for good. */
  fix(side: number, number: number): void {
    this.back(0)
    if (!this.trail.set(side, number, undefined)) this.sound = false
  }

  /** Takes back all decisions after `level`. */
  back(level: number): void {
    const { trail, heap } = this
    this.assumedTrue = 0
    const from = trail.levels[level]
    if (from === undefined) return
    for (let i = trail.sides.length - 1; i >= from; i--) heap.push(trail.sides[i]! >> 1)
    trail.backTo(level)
  }

  /** Whether what holds without any decision is free of contradiction. */
  settle(): boolean {
    this.back(0)
    if (this.sound && !this.propagate()) this.sound = false
    return this.sound
  }

  /**
   * Looks for a solution in which all assumed literals hold, for at most `limit` conflicts. After 'found' the values
   * stand in the trail until the next call.
   */
  run(assumed: readonly number[], limit: number): Outcome {
    if (!this.settle()) return 'none'
    this.until = this.conflicts + limit
    this.assumed = assumed
    return this.goOn()
  }

  /** Goes on with a run that was paused; nothing may have been asked of the solver meanwhile. */
  goOn(): Outcome {
    const { trail } = this
    this.woken = 0
    for (;;) {
      if (!this.propagate()) {
        this.conflicts++
        if (trail.levels.length === 0) {
          this.sound = false
          return 'none'
        }
        if (!this.resolve()) return 'none'
        if (this.conflicts >= this.until) return 'limit'
        continue
      }
      if (this.woken > pauseAfter) return 'paused'
      const next = this.next(this.assumed)
      if (next === 'found' || next === 'none') return next
      trail.levels.push(trail.sides.length)
      trail.set(next[0], next[1], undefined)
    }
  }

  /** Learns from the conflict and goes back; false where it holds without any decision. */
  private resolve(): boolean {
    const { trail } = this
    const { conflict } = trail
    this.empty()
    let level = 0
    for (let i = 0; i < conflict.length; i += 2)
      level = Math.max(level, trail.levelOf(trail.entryOf(conflict[i]!, conflict[i + 1]!)))
    if (level === 0) {
      this.sound = false
      return false
    }
    this.back(level)
    const lesson = this.parts.learning ? this.learner.learn(conflict) : this.decisions()
    this.back(lesson.level)
    const { literals } = lesson
    if (literals.length === 2) return this.trail.set(literals[0]!, literals[1]!, undefined)
    const clause = new Clause(literals, true)
    clause.spread = lesson.spread
    clause.used = this.conflicts
    this.clauses.add(clause)
    trail.set(literals[0]!, literals[1]!, clause)
    this.heap.fade()
    if (this.clauses.learned.length > this.learnedLimit) {
      this.clauses.forget(trail)
      this.learnedLimit += 200
    }
    return true
  }

  /** All that was decided, as a lesson: what a search without learning knows of a conflict. */
  private decisions(): Lesson {
    const { levels, sides, news } = this.trail
    const literals = levels.toReversed().flatMap(at => [sides[at]! ^ 1, 1 - news[at]!])
    return { literals, level: levels.length - 1, spread: levels.length }
  }

  private empty(): void {
    this.waiting.length = 0
    this.isWaiting.clear()
  }

  private wait(watcher: Watcher): void {
    if (this.isWaiting.has(watcher)) return
    this.isWaiting.add(watcher)
    this.waiting.push(watcher)
  }

  private propagate(): boolean {
    const { trail, quick, slow } = this
    for (;;) {
      while (trail.done < trail.sides.length) {
        const entry = trail.done++
        const side = trail.sides[entry]!
        if (!this.clauses.wake(trail, side, trail.olds[entry]!, trail.news[entry]!)) return false
        const links = quick[side]
        this.woken += 1 + (links?.length ?? 0)
        if (links) for (let i = 0; i < links.length; i++) if (!links[i]!.wake(trail)) return false
        const later = slow[side]
        if (later) for (let i = 0; i < later.length; i++) this.wait(later[i]!)
      }
      const watcher = this.waiting.shift()
      if (!watcher) return true
      this.isWaiting.delete(watcher)
      // The slow ones look at all they watch.
      this.woken += 50
      if (!watcher.wake(trail)) return false
    }
  }

  /** The next literal to decide; none left: found. */
  private next(assumed: readonly number[]): 'found' | 'none' | readonly [number, number] {
    const { trail, heap, guide } = this
    for (; this.assumedTrue < assumed.length; this.assumedTrue += 2) {
      const side = assumed[this.assumedTrue]!
      const number = assumed[this.assumedTrue + 1]!
      if (trail.isFalse(side, number)) return 'none'
      if (!trail.isTrue(side, number)) return [side, number]
    }
    for (let x = heap.pop(); x !== undefined; x = heap.pop()) {
      if (trail.fixed(x)) continue
      const least = trail.least(x)
      const most = trail.most(x)
      const wish = guide[x] ?? least
      if (most - least > 1 && wish > least && wish < most) heap.push(x)
      if (wish <= least) return [2 * x + 1, -least]
      return [2 * x, Math.min(wish, most)]
    }
    return 'found'
  }
}
