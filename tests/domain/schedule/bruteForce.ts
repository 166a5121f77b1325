import type { Problem } from '../../../main/domain/schedule/types.ts'

/** The costs of every drop-off and handover there is: the fewest moves for each such pair. */
export interface Way {
  readonly dropOff: number
  readonly handover: number
  readonly moves: number
  readonly blockedOpen: number
}

/**
 * Every plan there is, by trying all of them on the grid: for each drop-off, each step, each bay and each grid
 * point, with the fewest moves. Nothing clever, minute arrays throughout; for small cases only.
 */
export function everyWay(problem: Problem): Way[] {
  const { grid, horizon, bays, crew } = problem
  const { steps, release } = problem.newJob
  const first = problem.gridFrom ?? 0
  const points: number[] = []
  for (let t = first - Math.floor(first / grid) * grid; t <= horizon; t += grid) points.push(t)
  const open = Array.from({ length: horizon + 1 }, (_, t) => problem.open.some(o => o.from <= t && t < o.to))
  const door = (t: number) => problem.open.some(o => o.from <= t && t <= o.to)
  const free = bays.map(bay =>
    Array.from(
      { length: horizon + 1 },
      (_, t) =>
        !bay.closed.some(c => c.from <= t && t < c.to) &&
        !problem.fixed.some(f => f.bay === bay.id && f.from <= t && t < f.to),
    ),
  )
  const away = crew.map(person =>
    Array.from({ length: horizon + 1 }, (_, t) => person.away.some(a => a.from <= t && t < a.to)),
  )
  const stands = (b: number, from: number, to: number) => {
    for (let t = from; t < to; t++) if (!free[b]![t]) return false
    return true
  }
  /** The end of step `i` begun at `start`, or undefined where it cannot be done there. */
  const endOf = (i: number, start: number): number | undefined => {
    const step = steps[i]!
    if (start < release || start < (step.startFrom ?? start) || start > (step.startTo ?? start)) return
    if (step.kind === 'hold') return start + step.minutes <= horizon ? start + step.minutes : undefined
    const worked: number[] = []
    if (!open[start]) return
    let t = start
    for (; worked.length < step.minutes; t++) {
      if (t >= horizon) return
      if (open[t]) worked.push(t)
      else if (!step.split) return
    }
    if (step.skill !== null) {
      const able = crew.filter(
        (person, c) => person.skills.includes(step.skill!) && worked.every(minute => !away[c]![minute]),
      )
      if (able.length < step.crew) return
      const { help } = step
      const part = help ? worked.slice(help.from, help.from + help.minutes) : []
      const there = crew.filter(
        (person, c) => person.skills.includes(step.skill!) && part.every(minute => !away[c]![minute]),
      )
      // Hall's condition, tried the long way: some choice of the whole step's people leaves enough of the others.
      if (
        help &&
        !teams(able, step.crew).some(team => there.filter(p => !team.includes(p)).length >= help.crew)
      )
        return
    }
    return t
  }
  const ends = steps.map((_, i) => new Map(points.map(t => [t, endOf(i, t)] as const)))
  const fits = steps.map(step =>
    bays.map(
      bay =>
        (step.needs == null || bay.can.includes(step.needs)) && (!step.bays || step.bays.includes(bay.id)),
    ),
  )

  const ways: Way[] = []
  for (const dropOff of points) {
    if (!door(dropOff)) continue
    // Where the car can be when step i starts: 'bay:start' -> fewest moves; the stay is checked up to that start.
    let here = new Map<string, number>()
    for (const b of bays.keys())
      if (fits[0]![b] && ends[0]!.get(dropOff) !== undefined) here.set(`${b}:${dropOff}`, 0)
    for (let i = 0; i < steps.length; i++) {
      const step = steps[i]!
      const next = steps[i + 1]
      const then = new Map<string, number>()
      const reach = (b: number, t: number, moves: number) => {
        const key = `${b}:${t}`
        if (!(then.get(key)! <= moves)) then.set(key, moves)
      }
      for (const [key, moves] of here) {
        const [b, start] = key.split(':').map(Number) as [number, number]
        const end = ends[i]!.get(start)!
        const places = [{ bay: b, since: start, moves }]
        if (step.kind === 'hold' && step.moveAfter != null)
          for (const t of points)
            if (t >= start + step.moveAfter && t < end && door(t) && stands(b, start, t))
              for (const c of bays.keys())
                if (c !== b && fits[i]![c]) places.push({ bay: c, since: t, moves: moves + 1 })
        for (const place of places) {
          if (!stands(place.bay, place.since, end)) continue
          if (!next) {
            for (const t of points)
              if (t >= end && door(t) && stands(place.bay, place.since, t)) {
                reach(0, t, place.moves)
                break
              }
            continue
          }
          for (const t of points) {
            const wait = t - end
            if (wait < (next.waitMin ?? 0) || wait > (next.waitMax ?? wait)) continue
            if (ends[i + 1]!.get(t) === undefined || !stands(place.bay, place.since, t)) continue
            for (const c of bays.keys())
              if (fits[i + 1]![c] && (c === place.bay || (!next.sameBay && door(t))))
                reach(c, t, place.moves + (c === place.bay ? 0 : 1))
          }
        }
      }
      here = then
    }
    for (const [key, moves] of here) {
      const handover = Number(key.split(':')[1])
      let blockedOpen = 0
      for (let t = dropOff; t < handover; t++) if (open[t]) blockedOpen++
      for (const step of steps) if (step.kind === 'work') blockedOpen -= step.minutes
      ways.push({ dropOff, handover, moves, blockedOpen })
    }
  }
  return ways
}

/** Every choice of `size` of them. */
function teams<T>(people: readonly T[], size: number): T[][] {
  if (size === 0) return [[]]
  return people.flatMap((one, i) => teams(people.slice(i + 1), size - 1).map(rest => [one, ...rest]))
}

/** The best way by these figures in turn, smallest first. */
export function bestWay(ways: readonly Way[], by: (way: Way) => number[]): Way | undefined {
  let best: Way | undefined
  for (const way of ways) {
    if (!best) {
      best = way
      continue
    }
    const a = by(way)
    const b = by(best)
    const i = a.findIndex((x, j) => x !== b[j])
    if (i >= 0 && a[i]! < b[i]!) best = way
  }
  return best
}
