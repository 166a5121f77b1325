import type { OfferKind, Problem } from '../../../main/domain/schedule/types.ts'
import type { Highs } from './highs.ts'

export type Term = [number, string]

/**
 * The promise as a time-indexed mixed-integer program, for a solver that shares nothing with the engine. One unit of
 * flow, the car, runs through (step, bay, grid point): `x` says which step starts where and when and from which bay,
 * `z` that it stands there for the slot that follows, `h` when it goes home. Waits tie the start times of one step to
 * those of the next. Without the app's extensions.
 */
export class PromiseMilp {
  readonly lines: string[] = []
  readonly binaries = new Set<string>()
  readonly handover: Term[] = []
  readonly dropOff: Term[] = []
  readonly moves: Term[] = []
  readonly openSpan: Term[] = []
  /** By "bay_slot": the variables by which the car stands there. */
  readonly standing = new Map<string, string[]>()
  /** By step and grid point: the variables by which it starts then. */
  readonly startsAt: string[][][] = []

  /** All names begin with the prefix, so that several jobs can stand in one program. */
  constructor(problem: Problem, earliest: number, prefix = '') {
    const { grid, horizon, bays, crew } = problem
    const { steps } = problem.newJob
    const points = Array.from({ length: Math.floor(horizon / grid) + 1 }, (_, k) => k * grid)
    const isOpen = Array.from({ length: horizon + 1 }, (_, t) =>
      problem.open.some(o => o.from <= t && t < o.to),
    )
    const openBefore = [0]
    for (let t = 0; t < horizon; t++) openBefore.push(openBefore[t]! + (isOpen[t] ? 1 : 0))
    const isDoor = (t: number) => problem.open.some(o => o.from <= t && t <= o.to)
    const endOf = (i: number, start: number): number => {
      const step = steps[i]!
      let t = start
      const used: number[] = []
      if (step.kind === 'hold') return start + step.minutes
      if (!isOpen[start]) return Number.POSITIVE_INFINITY
      for (; used.length < step.minutes; t++) {
        if (t >= horizon || (!isOpen[t] && !step.split)) return Number.POSITIVE_INFINITY
        if (isOpen[t]) used.push(t)
      }
      const able = crew.filter(
        person =>
          step.skill !== null &&
          person.skills.includes(step.skill) &&
          !used.some(minute => person.away.some(a => a.from <= minute && minute < a.to)),
      )
      return step.skill === null || able.length >= step.crew ? t : Number.POSITIVE_INFINITY
    }
    const isFree = (b: number, slot: number) => {
      const over = (s: { from: number; to: number }) => s.from < slot + grid && slot < s.to
      return !bays[b]!.closed.some(over) && !problem.fixed.some(f => f.bay === bays[b]!.id && over(f))
    }
    const fits = (i: number, b: number) => steps[i]!.needs == null || bays[b]!.can.includes(steps[i]!.needs!)

    // startsAt[i][k]: all variables by which step i starts at point k, with the bay they lead into and out of.
    const { startsAt } = this
    const into = new Map<string, string[]>()
    const outOf = new Map<string, string[]>()
    const put = (map: Map<string, string[]>, key: string, name: string) => {
      const list = map.get(key)
      if (list) list.push(name)
      else map.set(key, [name])
    }
    steps.forEach((step, i) => {
      startsAt.push(points.map(() => []))
      points.forEach((t, k) => {
        if (t < (i === 0 ? earliest : problem.newJob.release) || endOf(i, t) > horizon) return
        for (const to of bays.keys()) {
          if (!fits(i, to)) continue
          for (const from of i === 0 ? [-1] : bays.keys()) {
            if (i > 0 && !fits(i - 1, from)) continue
            if (from !== to && (!isDoor(t) || (i > 0 && step.sameBay))) continue
            const name = i === 0 ? `${prefix}x0_${to}_${k}` : `${prefix}x${i}_${from}_${to}_${k}`
            this.binaries.add(name)
            startsAt[i]![k]!.push(name)
            put(into, `${i}_${to}_${k}`, name)
            if (i > 0) put(outOf, `${i - 1}_${from}_${k}`, name)
            if (i > 0 && from !== to) this.moves.push([1, name])
            if (i === 0) {
              this.dropOff.push([k, name])
              this.openSpan.push([-openBefore[t]!, name])
            }
          }
        }
      })
    })
    const last = steps.length - 1
    const home: string[][] = points.map(() => [])
    points.forEach((t, k) => {
      if (!isDoor(t)) return
      for (const b of bays.keys()) {
        if (!fits(last, b)) continue
        const name = `${prefix}h_${b}_${k}`
        this.binaries.add(name)
        home[k]!.push(name)
        put(outOf, `${last}_${b}_${k}`, name)
        this.handover.push([k, name])
        this.openSpan.push([openBefore[t]!, name])
      }
    })
    for (const starts of [...startsAt, home])
      this.add(
        starts.flat().map(name => [1, name]),
        '=',
        1,
      )
    // The car stays in a bay from slot to slot until the next step, or the owner, takes it out.
    steps.forEach((_, i) => {
      for (const b of bays.keys()) {
        if (!fits(i, b)) continue
        points.forEach((slot, k) => {
          const z = `${prefix}z${i}_${b}_${k}`
          const free = slot + grid <= horizon && isFree(b, slot)
          const terms: Term[] = []
          if (free) terms.push([1, z])
          if (free) put(this.standing, `${b}_${k}`, z)
          if (k > 0 && points[k]! <= horizon && isFree(b, points[k - 1]!))
            terms.push([-1, `${prefix}z${i}_${b}_${k - 1}`])
          for (const name of into.get(`${i}_${b}_${k}`) ?? []) terms.push([-1, name])
          for (const name of outOf.get(`${i}_${b}_${k}`) ?? []) terms.push([1, name])
          this.add(terms, '=', 0)
        })
      }
    })
    // Whatever has started by a point must have been ready by then, and what was ready long enough must have started.
    // `s` counts the starts so far; ends grow with starts, so what is ready by a point is a count too.
    const all = [...startsAt, home]
    all.forEach((starts, i) => {
      starts.forEach((names, k) => {
        const before: Term[] = k > 0 ? [[-1, `${prefix}s${i}_${k - 1}`]] : []
        this.add([[1, `${prefix}s${i}_${k}`], ...before, ...names.map((name): Term => [-1, name])], '=', 0)
      })
    })
    for (let i = 0; i <= last; i++) {
      const waitMin = i < last ? (steps[i + 1]!.waitMin ?? 0) : 0
      const waitMax = i < last ? steps[i + 1]!.waitMax : null
      const ends = points.map((t, k) => (startsAt[i]![k]!.length > 0 ? endOf(i, t) : undefined))
      const begun = (when: (end: number) => boolean): Term[] => {
        const k = ends.findLastIndex(end => end !== undefined && when(end))
        return k < 0 ? [] : [[-1, `${prefix}s${i}_${k}`]]
      }
      points.forEach((t, k) => {
        const started: Term = [1, `${prefix}s${i + 1}_${k}`]
        this.add([started, ...begun(end => end + waitMin <= t)], '<=', 0)
        // Its last allowed start is the last grid point of the wait.
        if (waitMax != null) this.add([started, ...begun(end => end + waitMax < t + grid)], '>=', 0)
      })
    }
  }

  add(terms: Term[], sense: '=' | '<=' | '>=', right: number): void {
    if (terms.length > 0) this.lines.push(`${expression(terms)} ${sense} ${right}`)
    else if ((sense === '=' && right !== 0) || (sense === '>=' && right > 0)) this.lines.push('0 none = 1')
  }

  /** The least value of the objective, which is then held to it in the solves that follow; undefined: infeasible. */
  minimise(highs: Pick<Highs, 'solve'>, terms: Term[], options: Record<string, unknown>): number | undefined {
    const text = [
      'Minimize',
      ` obj: ${terms.length > 0 ? expression(terms) : '0 none'}`,
      'Subject To',
      ...this.lines.map((line, i) => ` c${i}: ${line}`),
      'Bounds',
      ' 0 <= none <= 0',
      'Binary',
      ` ${[...this.binaries].join('\n ')}`,
      'End',
    ].join('\n')
    const result = highs.solve(text, options)
    if (result.Status !== 'Optimal') return undefined
    const value = Math.round(result.ObjectiveValue)
    if (terms.length > 0) this.add(terms, '=', value)
    return value
  }
}

function expression(terms: readonly Term[]): string {
  return terms.map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`).join('\n ')
}

export interface Figures {
  readonly dropOff: number
  readonly handover: number
  readonly blockedOpen: number
  readonly moves: number
}

/** One offer by HiGHS: its objectives minimised in turn. */
export function offerByMilp(
  highs: Pick<Highs, 'solve'>,
  problem: Problem,
  kind: OfferKind,
  options: Record<string, unknown>,
): Figures | undefined {
  const earliest =
    kind === 'askedDay' ? Math.max(problem.newJob.release, problem.newJob.asked) : problem.newJob.release
  const milp = new PromiseMilp(problem, earliest)
  const handsOn = problem.newJob.steps.reduce(
    (sum, step) => sum + (step.kind === 'work' ? step.minutes : 0),
    0,
  )
  const latest = milp.dropOff.map(([t, name]): Term => [-t, name])
  const { handover, openSpan, moves, dropOff } = milp
  const order = {
    soonest: [handover, openSpan, moves, latest],
    leastBlocked: [openSpan, handover, moves, latest],
    askedDay: [dropOff, handover, openSpan, moves],
  }[kind]
  const values = new Map<Term[], number>()
  for (const terms of order) {
    const value = milp.minimise(highs, terms, options)
    if (value === undefined) return undefined
    values.set(terms, value)
  }
  return {
    dropOff: (values.get(dropOff) ?? 0 - values.get(latest)!) * problem.grid,
    handover: values.get(handover)! * problem.grid,
    blockedOpen: values.get(openSpan)! - handsOn,
    moves: values.get(moves)!,
  }
}
