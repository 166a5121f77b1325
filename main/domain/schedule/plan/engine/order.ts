import type { Rising } from './links.ts'
import type { Trail, Watcher } from './trail.ts'

/** 'If this literal holds, then `before` comes before `after`', both nodes; without a literal: always. */
export interface Edge {
  readonly before: number
  readonly after: number
  readonly when?: readonly [number, number]
}

/** 'The order has no circle': moves at one minute may follow each other in a chain, but nobody changes places. */
export class Order implements Watcher {
  /** By node, which is a variable: the time of each of its values. */
  private readonly times: ReadonlyMap<number, Rising>
  private readonly after: Edge[][] = []
  private readonly bySide = new Map<number, Edge[]>()
  private readonly seen: number[] = []
  private round = 0
  /** Trail entries looked at; the trail may have been cut since. */
  private looked = 0

  constructor(edges: readonly Edge[], times: ReadonlyMap<number, Rising>) {
    this.times = times
    for (const edge of edges) {
      const out = this.after[edge.before]
      if (out) out.push(edge)
      else this.after[edge.before] = [edge]
      if (!edge.when) continue
      const same = this.bySide.get(edge.when[0])
      if (same) same.push(edge)
      else this.bySide.set(edge.when[0], [edge])
    }
  }

  wake(trail: Trail): boolean {
    for (let i = Math.min(this.looked, trail.levels.at(-1) ?? 0); i < trail.sides.length; i++)
      for (const edge of this.bySide.get(trail.sides[i]!) ?? []) {
        this.round++
        const path: number[] = [...edge.when!]
        const latest = this.times.get(edge.before)![trail.most(edge.before)]!
        if (!this.reaches(trail, edge.after, edge.before, latest, path)) continue
        trail.conflict = path
        return false
      }
    this.looked = trail.sides.length
    return true
  }

  /**
   * Whether `goal`, which is no later than `latest`, comes after `node` by what holds now; `path` gathers the literals
   * of the way. A node that is later than `latest` for certain is on no way there.
   */
  private reaches(trail: Trail, node: number, goal: number, latest: number, path: number[]): boolean {
    if (node === goal) return true
    this.seen[node] = this.round
    if (this.times.get(node)![trail.least(node)]! > latest) return false
    for (const { after, when } of this.after[node] ?? []) {
      if (this.seen[after] === this.round || (when && !trail.isTrue(when[0], when[1]))) continue
      const length = path.length
      if (when) path.push(when[0], when[1])
      if (this.reaches(trail, after, goal, latest, path)) return true
      path.length = length
    }
    return false
  }
}
