import type { NewJob, Plan, Problem } from '../../../main/domain/schedule/types.ts'

/**
 * A judge of plans written apart from the engine: it shares only the types with it, walks minute by minute, and
 * follows the six rules of tests/reference/README.md in their order. Returns the objections.
 */
export function verify(problem: Problem, plan: Plan, job: NewJob = problem.newJob): string[] {
  const objections: string[] = []
  const object = (text: string) => objections.push(text)
  const isOpen = (minute: number) => problem.open.some(o => o.from <= minute && minute < o.to)
  const isDoor = (minute: number) => problem.open.some(o => o.from <= minute && minute <= o.to)
  const onGrid = (minute: number) => (minute - (problem.gridFrom ?? 0)) % problem.grid === 0

  if (plan.steps.length !== job.steps.length) return ['number of steps']
  const bayMinutes = new Map<number, string>()
  let earliest = job.release
  let previousEnd: number | undefined

  for (let i = 0; i < job.steps.length; i++) {
    const step = job.steps[i]!
    const p = plan.steps[i]!
    if (!onGrid(p.start)) object(`step ${i} off grid`)
    if (p.start < earliest) object(`step ${i} before its time`)
    if (step.startFrom != null && p.start < step.startFrom) object(`step ${i} before its pin`)
    if (step.startTo != null && p.start > step.startTo) object(`step ${i} after its pin`)
    if (previousEnd !== undefined) {
      if (p.start - previousEnd < (step.waitMin ?? 0)) object(`step ${i} waits too little`)
      if (step.waitMax != null && p.start - previousEnd > step.waitMax) object(`step ${i} waits too long`)
    }
    // Rules 1 and 2: how long it takes, and whom.
    const worked: number[] = []
    let t = p.start
    if (step.kind === 'hold') t += step.minutes
    else if (step.split) {
      if (!isOpen(p.start)) object(`step ${i} starts in a closed minute`)
      while (worked.length < step.minutes && t <= problem.horizon) {
        if (isOpen(t)) worked.push(t)
        t++
      }
    } else
      for (; t < p.start + step.minutes; t++) {
        if (!isOpen(t)) object(`step ${i} works at closed minute ${t}`)
        worked.push(t)
      }
    if (t !== p.end) object(`step ${i} ends ${t}, not ${p.end}`)
    if (step.kind === 'hold' || step.skill === null) {
      if (p.crew.length > 0) object(`step ${i} takes people it does not need`)
    } else {
      if (new Set(p.crew).size !== step.crew || p.crew.length !== step.crew) object(`step ${i} crew`)
      for (const id of p.crew) {
        const person = problem.crew.find(one => one.id === id)
        if (!person?.skills.includes(step.skill)) object(`step ${i}: ${id} cannot do it`)
        for (const away of person?.away ?? [])
          if (worked.some(minute => away.from <= minute && minute < away.to)) object(`${id} is away in ${i}`)
      }
    }
    const help = (step.kind === 'work' && step.skill !== null && step.help) || null
    const helpers = p.help ?? []
    if (new Set([...p.crew, ...helpers]).size !== p.crew.length + (help?.crew ?? 0)) object(`step ${i} help`)
    const part = help ? worked.slice(help.from, help.from + help.minutes) : []
    for (const id of helpers) {
      const person = problem.crew.find(one => one.id === id)
      if (step.kind === 'work' && !person?.skills.includes(step.skill!))
        object(`step ${i}: ${id} cannot help`)
      if (person?.away.some(away => part.some(minute => away.from <= minute && minute < away.to)))
        object(`${id} is away from the help in ${i}`)
    }
    earliest = p.end
    previousEnd = p.end
    // Rules 3 and 4: where the car stands until the next step starts, and when it may go there.
    const bay = problem.bays.find(b => b.id === p.bay)
    const until = plan.steps[i + 1]?.start ?? plan.handover
    const fits = (id: string) =>
      (step.needs == null || problem.bays.find(b => b.id === id)?.can.includes(step.needs)) &&
      (!step.bays || step.bays.includes(id))
    if (!bay || !fits(p.bay)) object(`step ${i} cannot be done in ${p.bay}`)
    const stood = bayMinutes.get(p.start - 1)
    if (i === 0 && !isDoor(p.start)) object('drop-off behind closed doors')
    if (i > 0 && stood !== p.bay && !isDoor(p.start)) object(`move before step ${i} behind closed doors`)
    if (i > 0 && step.sameBay && stood !== p.bay) object(`step ${i} left its bay`)
    let here = p.bay
    for (let minute = p.start; minute < until; minute++) {
      if (p.moved && minute === p.moved.at) here = p.moved.bay
      bayMinutes.set(minute, here)
    }
    if (p.moved) {
      const { at } = p.moved
      const allowed = step.kind === 'hold' && step.moveAfter != null && at >= p.start + step.moveAfter
      if (!allowed || at >= p.end || !isDoor(at) || !onGrid(at)) object(`move inside step ${i}`)
      if (!fits(p.moved.bay) || p.moved.bay === p.bay) object(`move inside step ${i} to ${p.moved.bay}`)
    }
  }
  for (const [minute, id] of bayMinutes) {
    if (problem.fixed.some(f => f.bay === id && f.from <= minute && minute < f.to))
      object(`${id} is taken at ${minute}`)
    if (problem.bays.find(b => b.id === id)?.closed.some(c => c.from <= minute && minute < c.to))
      object(`${id} is closed at ${minute}`)
  }
  // Rule 5, and the doors of the handover.
  if (previousEnd !== undefined && plan.handover < previousEnd) object('handover before the end')
  if (!isDoor(plan.handover)) object('handover behind closed doors')
  if (!onGrid(plan.handover)) object('handover off grid')
  if (plan.handover > problem.horizon) object('handover beyond the horizon')
  return objections
}

/** The objective of a plan, counted minute by minute. */
export function count(problem: Problem, plan: Plan, job: NewJob = problem.newJob) {
  const dropOff = plan.steps[0]!.start
  let open = 0
  for (let t = dropOff; t < plan.handover; t++) if (problem.open.some(o => o.from <= t && t < o.to)) open++
  const handsOn = job.steps.reduce((sum, step) => sum + (step.kind === 'work' ? step.minutes : 0), 0)
  const route = plan.steps.flatMap(p => (p.moved ? [p.bay, p.moved.bay] : [p.bay]))
  const moves = route.filter((bay, i) => i > 0 && bay !== route[i - 1]).length
  return { dropOff, handover: plan.handover, blockedOpen: open - handsOn, moves }
}
