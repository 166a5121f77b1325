/** Weeks that together have less room than visits that can come in no other week. */
export interface TightWeeks {
  readonly weeks: readonly number[]
  readonly room: number
  readonly wanted: number
}

/** Visits of one window inside the plan and one due week: all that matters for the cost. */
interface Wish {
  readonly ids: readonly string[]
  readonly first: number
  readonly last: number
  readonly due: number
}

/** A week with the room that is left in it; one more, the last, holds the visits left over and has room for all. */
interface Week {
  readonly index: number
  free: number
  /** The groups with a visit in it. */
  readonly groups: Set<Group>
  /** The cheapest move to each other week, by its index. */
  readonly moves: (Move | null)[]
}

/** Where the visits of a wish are. */
interface Group {
  readonly first: number
  readonly last: number
  readonly due: number
  readonly window: readonly Week[]
  /** The visits placed in each week of the window, and those that are left over. */
  readonly placed: ReadonlyMap<Week, string[]>
}

/** Move one visit of a group from the week it is in to another. */
interface Move {
  readonly group: Group
  readonly cost: number
}

/** The cheapest path found to a week, by its last move; without one, it leads there straight from the new visit. */
interface Reach {
  readonly week: Week
  cost: number
  by: { readonly before: Reach; readonly group: Group } | null
}

/**
 * A minimum-cost flow of visits into weeks: new ones take the cheapest augmenting path, pushing others on to other weeks
 * where that costs less, as many at once as the path has room for. That is successive shortest paths, exact at every
 * stage: a path that is not full yet stays the cheapest. The network is contracted to its weeks: of all visits of week v that could move to w, only the cheapest matters, and
 * after an augmentation only the weeks on its path have to look for theirs again. Being left over is one more "week"
 * with endless room, at a price no path of others reaches.
 */
export class WeekFlow {
  private readonly weeks: readonly Week[]
  private readonly left: Week
  private readonly lateWeight: number
  private readonly leftCost: number
  private readonly groups = new Map<string, Group>()

  constructor(room: readonly number[], lateWeight: number) {
    const week = (free: number, index: number): Week => {
      const moves = new Array<Move | null>(room.length + 1).fill(null)
      return { index, free, groups: new Set(), moves }
    }
    this.left = week(Number.POSITIVE_INFINITY, room.length)
    this.weeks = [...room.map(week), this.left]
    this.lateWeight = lateWeight
    // Every simple path changes each week at most once, by at most the whole plan's lateness each time.
    this.leftCost = lateWeight * (room.length + 1) ** 2 * 2
  }

  /** Gives each visit a week, or leaves it or another over when there is none. */
  add(wish: Wish): void {
    const group = this.groupOf(wish)
    for (let done = 0; done < wish.ids.length; ) {
      let target = this.cheapestFor(group)
      let most = Math.min(wish.ids.length - done, target.week.free)
      for (let { by } = target; by; by = by.before.by)
        most = Math.min(most, this.idsIn(by.group, by.before.week).length)
      target.week.free -= most
      // Back along the path, the visits on it make place for those before.
      const changed = new Set<Week>([target.week])
      for (let by = target.by; by; by = target.by) {
        this.put(by.group, target.week, this.take(by.group, by.before.week, most))
        target = by.before
        changed.add(target.week)
      }
      this.put(group, target.week, wish.ids.slice(done, done + most))
      for (const week of changed) this.lookAgain(week)
      done += most
    }
  }

  /** The week of each visit, those left over, and the weeks that are why. */
  result(): { weeks: Map<string, number>; full: string[]; tight: TightWeeks[] } {
    const weeks = new Map<string, number>()
    const full: string[] = []
    for (const { placed } of this.groups.values())
      for (const [week, ids] of placed) {
        if (week === this.left) full.push(...ids)
        else for (const id of ids) weeks.set(id, week.index)
      }
    return { weeks, full, tight: this.tightWeeks() }
  }

  private groupOf({ first, last, due }: Omit<Wish, 'ids'>): Group {
    const key = `${first} ${last} ${due}`
    let group = this.groups.get(key)
    if (!group) {
      const window = this.weeks.slice(first, last + 1)
      group = { first, last, due, window, placed: new Map([...window, this.left].map(week => [week, []])) }
      this.groups.set(key, group)
    }
    return group
  }

  private idsIn({ first, last, placed }: Group, week: Week): string[] {
    const ids = placed.get(week)
    if (!ids) throw new Error(`Week ${week.index} is not among ${first} to ${last}`)
    return ids
  }

  private put(group: Group, week: Week, ids: readonly string[]) {
    const here = this.idsIn(group, week)
    for (const id of ids) here.push(id)
    week.groups.add(group)
  }

  private take(group: Group, week: Week, count: number): string[] {
    const ids = this.idsIn(group, week)
    const taken = ids.splice(ids.length - count, count)
    if (ids.length === 0) week.groups.delete(group)
    return taken
  }

  /**
   * What a group's visit costs in a week, beyond what it costs at best: how late it is before its first week even
   * begins is nobody's choice, and must not make leaving it over look like a saving.
   */
  private costIn(group: Group, week: Week): number {
    if (week === this.left) return this.leftCost
    const due = Math.min(group.last, Math.max(group.first, group.due))
    return week.index > due ? (week.index - due) * this.lateWeight : due - week.index
  }

  private lookAgain(week: Week) {
    week.moves.fill(null)
    for (const group of week.groups) {
      const here = this.costIn(group, week)
      for (const to of group.placed.keys()) {
        const cost = this.costIn(group, to) - here
        const known = week.moves[to.index]
        if (to !== week && (!known || cost < known.cost)) week.moves[to.index] = { group, cost }
      }
    }
  }

  /** The cheapest path of a group's visit to a week with room. */
  private cheapestFor(group: Group): Reach {
    const left: Reach = { week: this.left, cost: this.leftCost, by: null }
    const weeks = this.weeks.slice(0, -1).map((week): Reach => {
      const open = group.first <= week.index && week.index <= group.last
      return { week, cost: open ? this.costIn(group, week) : Number.POSITIVE_INFINITY, by: null }
    })
    this.shorten([...weeks, left], [left, ...weeks.slice(group.first, group.last + 1)])
    let best = left
    for (const reach of weeks) if (reach.week.free > 0 && reach.cost < best.cost) best = reach
    return best
  }

  /** Bellman and Ford over the weeks, from those reached straight: costs may be negative, cycles never are. */
  private shorten(all: readonly Reach[], straight: readonly Reach[]) {
    let active = straight
    while (active.length > 0) {
      const next = new Set<Reach>()
      for (const before of active)
        for (const to of all) {
          const move = before.week.moves[to.week.index]
          if (!move || before.cost + move.cost >= to.cost) continue
          to.cost = before.cost + move.cost
          to.by = { before, group: move.group }
          next.add(to)
        }
      active = [...next]
    }
  }

  /**
   * From every visit left over, the weeks that can be reached by moving others: all of them are full of visits that
   * can only go to weeks among them (P. Hall 1935). Sets that overlap are one, so that no visit is counted twice.
   */
  private tightWeeks(): TightWeeks[] {
    let sets: Set<Week>[] = []
    for (const start of this.left.groups) {
      if (sets.some(weeks => start.window.some(week => weeks.has(week)))) continue
      const reached = this.reachedFrom(start)
      const apart = sets.filter(weeks => weeks.isDisjointFrom(reached))
      const touched = sets.filter(weeks => !weeks.isDisjointFrom(reached))
      sets = [...apart, touched.reduce((all, weeks) => all.union(weeks), reached)]
    }
    return sets.map(weeks => this.tightness(weeks))
  }

  private reachedFrom(start: Group): Set<Week> {
    const weeks = new Set<Week>()
    const waiting = [...start.window]
    for (let week = waiting.pop(); week; week = waiting.pop()) {
      if (weeks.has(week)) continue
      weeks.add(week)
      for (const group of week.groups) waiting.push(...group.window)
      for (const { placed, window } of this.left.groups) if (placed.has(week)) waiting.push(...window)
    }
    return weeks
  }

  private tightness(weeks: ReadonlySet<Week>): TightWeeks {
    let room = 0
    let wanted = 0
    for (const { window, placed } of this.groups.values())
      for (const [week, ids] of placed) {
        if (weeks.has(week)) room += ids.length
        const over = week === this.left && window.some(each => weeks.has(each))
        if (over || weeks.has(week)) wanted += ids.length
      }
    return { weeks: [...weeks].map(week => week.index).sort((a, b) => a - b), room, wanted }
  }
}
