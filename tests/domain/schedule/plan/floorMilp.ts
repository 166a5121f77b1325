import type { FloorProblem } from '../../../../main/domain/schedule/plan/types.ts'
import type { Highs } from '../highs.ts'
import { PromiseMilp, type Term } from '../milp.ts'

/**
 * The whole floor as one mixed-integer program: a flow for each car, at most one of them in a bay at a time, and people
 * chosen for every start. Cars may change places here, so its best is never above the floor's own. Returns tardiness,
 * blocked minutes and moves, minimised in turn, or undefined where there is no plan.
 */
export function floorByMilp(
  highs: Pick<Highs, 'solve'>,
  floor: FloorProblem,
  options: Record<string, unknown>,
): number[] | undefined {
  const tardiness: Term[] = []
  const openSpan: Term[] = []
  const moves: Term[] = []
  const standing = new Map<string, Term[]>()
  const busy = new Map<string, Term[]>()
  const put = (map: Map<string, Term[]>, key: string, name: string) =>
    map.set(key, [...(map.get(key) ?? []), [1, name]])
  const programs = floor.jobs.map((job, j) => {
    const program = new PromiseMilp({ ...floor, newJob: { ...job, asked: 0 } }, job.release, `j${j}`)
    for (const [k, name] of program.handover)
      tardiness.push([job.weight * Math.max(0, k * floor.grid - job.due), name])
    openSpan.push(...program.openSpan)
    moves.push(...program.moves)
    for (const [key, names] of program.standing) for (const name of names) put(standing, key, name)
    return program
  })
  const whole = programs[0]!
  for (const program of programs.slice(1)) {
    whole.lines.push(...program.lines)
    for (const name of program.binaries) whole.binaries.add(name)
  }
  const isOpen = (t: number) => floor.open.some(o => o.from <= t && t < o.to)
  floor.jobs.forEach((job, j) => {
    job.steps.forEach((step, i) => {
      if (step.kind === 'hold' || step.skill === null) return
      programs[j]!.startsAt[i]!.forEach((starts, k) => {
        if (starts.length === 0) return
        const used: number[] = []
        for (let t = k * floor.grid; used.length < step.minutes; t++) if (isOpen(t)) used.push(t)
        const able = floor.crew.filter(
          person =>
            person.skills.includes(step.skill!) &&
            !used.some(minute => person.away.some(a => a.from <= minute && minute < a.to)),
        )
        const chosen = able.map(person => `y${j}_${i}_${k}_${floor.crew.indexOf(person)}`)
        for (const [a, name] of chosen.entries()) {
          whole.binaries.add(name)
          for (const slot of new Set(used.map(minute => Math.floor(minute / floor.grid))))
            put(busy, `${floor.crew.indexOf(able[a]!)}_${slot}`, name)
        }
        whole.add(
          [...chosen.map((name): Term => [1, name]), ...starts.map((name): Term => [-step.crew, name])],
          '=',
          0,
        )
      })
    })
  })
  for (const terms of [...standing.values(), ...busy.values()])
    if (terms.length > 1) whole.add(terms, '<=', 1)
  const handsOn = floor.jobs
    .flatMap(job => job.steps)
    .reduce((sum, step) => sum + (step.kind === 'work' ? step.minutes : 0), 0)
  const values: number[] = []
  for (const terms of [tardiness, openSpan, moves]) {
    const value = whole.minimise(
      highs,
      terms.filter(([factor]) => factor !== 0),
      options,
    )
    if (value === undefined) return undefined
    values.push(value)
  }
  return [values[0]!, values[1]! - handsOn, values[2]!]
}
