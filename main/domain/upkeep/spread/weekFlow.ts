/** Weeks that together have less room than visits that can come in no other week. */
export interface TightWeeks {
  readonly weeks: readonly number[]
  readonly room: number
  readonly wanted: number
}

/** A visit whose window lies inside the plan. */
interface Wish {
  readonly id: string
  readonly first: number
  readonly last: number
  readonly due: number
}

/** Visits with the same window and due week: all that matters for the cost. */
interface Group {
  readonly first: number
  readonly last: number
  readonly due: number
  /** The visits placed in each week, by week less `first`; after the last week, those that are left over. */
  readonly placed: string[][]
}

/** Move one visit of a group from the week it is in to another. */
interface Move {
  readonly group: Group
  readonly cost: number
}

/**
 * A minimum-cost flow of visits into weeks, built up visit by visit: each new one takes the cheapest augmenting path,
 * pushing others on to other weeks where that costs less. That is successive shortest paths, exact at every stage. The
 * network is contracted to its weeks: of all visits of week v that could move to w, only the cheapest matters, and
 * after an augmentation only the weeks on its path have to look for theirs again. Being left over is one more "week"
 * with endless room, at a price no path of others reaches.
 */
export class WeekFlow {
  private readonly weeks: number
  private readonly left: number
  private readonly free: number[]
  private readonly lateWeight: number
  private readonly leftCost: number
  private readonly groups = new Map<string, Group>()
  /** The groups with a visit in a week (and, last, with one left over). */
  private readonly inWeek: Set<Group>[]
  /** The cheapest move from one week to another, row by row. */
  private readonly moves: (Move | null)[][]

  constructor(room: readonly number[], lateWeight: number) {
    this.weeks = room.length
    this.left = room.length
    this.free = [...room, Number.POSITIVE_INFINITY]
    this.lateWeight = lateWeight
    // Every simple path changes each week at most once, by at most the whole plan's lateness each time.
    this.leftCost = lateWeight * (room.length + 1) ** 2 * 2
    this.inWeek = this.free.map(() => new Set())
    this.moves = this.free.map(() => this.free.map(() => null))
  }

  /** Gives a visit a week, or leaves it or another over when there is none. */
  add(wish: Wish): void {
    const group = this.groupOf(wish)
    const { cost, from } = this.shortestPaths(group)
    let target = this.left
    for (let week = 0; week < this.weeks; week++)
      if (this.free[week]! > 0 && cost[week]! < cost[target]!) target = week
    // Back along the path, each visit on it makes place for the one before.
    const changed = new Set<number>([target])
    for (let week = target; ; ) {
      const before = from[week]!
      changed.add(week)
      if (before < 0) {
        this.put(group, week, wish.id)
        break
      }
      const mover = this.moves[before]![week]!.group
      this.put(mover, week, this.take(mover, before))
      changed.add(before)
      week = before
    }
    this.free[target]!--
    for (const week of changed) this.lookAgain(week)
  }

  /** The week of each visit, those left over, and the weeks that are why. */
  result(): { weeks: Map<string, number>; full: string[]; tight: TightWeeks[] } {
    const weeks = new Map<string, number>()
    const full: string[] = []
    for (const group of this.groups.values())
      group.placed.forEach((ids, i) => {
        if (i === group.placed.length - 1) full.push(...ids)
        else for (const id of ids) weeks.set(id, group.first + i)
      })
    return { weeks, full, tight: this.tightWeeks() }
  }

  private groupOf({ first, last, due }: Wish): Group {
    const key = `${first} ${last} ${due}`
    let group = this.groups.get(key)
    if (!group) {
      group = { first, last, due, placed: Array.from({ length: last - first + 2 }, () => []) }
      this.groups.set(key, group)
    }
    return group
  }

  private slot(group: Group, week: number): string[] {
    return group.placed[week === this.left ? group.placed.length - 1 : week - group.first]!
  }

  private put(group: Group, week: number, id: string) {
    this.slot(group, week).push(id)
    this.inWeek[week]!.add(group)
  }

  private take(group: Group, week: number): string {
    const ids = this.slot(group, week)
    const id = ids.pop()!
    if (ids.length === 0) this.inWeek[week]!.delete(group)
    return id
  }

  /**
   * What a group's visit costs in a week, beyond what it costs at best: how late it is before its first week even
   * begins is nobody's choice, and must not make leaving it over look like a saving.
   */
  private costIn(group: Group, week: number): number {
    if (week === this.left) return this.leftCost
    const due = Math.min(group.last, Math.max(group.first, group.due))
    return week > due ? (week - due) * this.lateWeight : due - week
  }

  private lookAgain(week: number) {
    const row = this.moves[week]!
    row.fill(null)
    for (const group of this.inWeek[week]!) {
      const here = this.costIn(group, week)
      for (let to = group.first; to <= group.last; to++) {
        const cost = this.costIn(group, to) - here
        if (to !== week && (row[to] === null || cost < row[to]!.cost)) row[to] = { group, cost }
      }
      if (week !== this.left) {
        const cost = this.leftCost - here
        if (row[this.left] === null || cost < row[this.left]!.cost) row[this.left] = { group, cost }
      }
    }
  }

  /** Bellman and Ford over the weeks: costs may be negative, cycles never are. `from` -1: straight from the visit. */
  private shortestPaths(group: Group): { cost: number[]; from: number[] } {
    const size = this.weeks + 1
    const cost = new Array<number>(size).fill(Number.POSITIVE_INFINITY)
    const from = new Array<number>(size).fill(-1)
    let active: number[] = [this.left]
    cost[this.left] = this.leftCost
    for (let week = group.first; week <= group.last; week++) {
      cost[week] = this.costIn(group, week)
      active.push(week)
    }
    while (active.length > 0) {
      const next = new Set<number>()
      for (const week of active) {
        const row = this.moves[week]!
        for (let to = 0; to < size; to++) {
          const move = row[to]
          if (!move || cost[week]! + move.cost >= cost[to]!) continue
          cost[to] = cost[week]! + move.cost
          from[to] = week
          next.add(to)
        }
      }
      active = [...next]
    }
    return { cost, from }
  }

  /**
   * From every visit left over, the weeks that can be reached by moving others: all of them are full of visits that
   * can only go to weeks among them (P. Hall 1935). Sets that overlap are one, so that no visit is counted twice.
   */
  private tightWeeks(): TightWeeks[] {
    let sets: Set<number>[] = []
    for (const start of this.inWeek[this.left]!) {
      if (sets.some(weeks => weeks.has(start.first))) continue
      const reached = this.reachedFrom(start)
      const apart = sets.filter(weeks => weeks.isDisjointFrom(reached))
      const touched = sets.filter(weeks => !weeks.isDisjointFrom(reached))
      sets = [...apart, touched.reduce((all, weeks) => all.union(weeks), reached)]
    }
    return sets.map(weeks => this.tightness(weeks))
  }

  private reachedFrom(start: Group): Set<number> {
    const weeks = new Set<number>()
    const waiting = Array.from({ length: start.last - start.first + 1 }, (_, i) => start.first + i)
    for (let week = waiting.pop(); week !== undefined; week = waiting.pop()) {
      if (weeks.has(week)) continue
      weeks.add(week)
      const over = [...this.inWeek[this.left]!].filter(({ first, last }) => first <= week && week <= last)
      for (const group of [...this.inWeek[week]!, ...over])
        for (let to = group.first; to <= group.last; to++) if (!weeks.has(to)) waiting.push(to)
    }
    return weeks
  }

  private tightness(weeks: ReadonlySet<number>): TightWeeks {
    let room = 0
    let wanted = 0
    for (const group of this.groups.values()) {
      group.placed.forEach((ids, i) => {
        const over = i === group.placed.length - 1
        if (!over && weeks.has(group.first + i)) room += ids.length
        if (over ? weeks.has(group.first) : weeks.has(group.first + i)) wanted += ids.length
      })
    }
    return { weeks: [...weeks].sort((a, b) => a - b), room, wanted }
  }
}
