import { difference, type Span, spanSet } from '../calendar/spans.ts'
import type { Goal } from './goals.ts'
import { staysOf } from './measure.ts'
import { firstEndingFrom, isDoorOpen, nextDoor, openTime } from './openTime.ts'
import { gridCeil, minuteAt, prepare } from './prepare.ts'
import type { Binding } from './reasons.ts'
import type { Rule } from './relax.ts'
import { startsOf } from './starts.ts'
import { helpOf, stepAt, teamSize } from './steps.ts'
import { chooseHelp, chooseTeam } from './team.ts'
import type { Plan, Problem, Stay } from './types.ts'

/**
 * A rule that binds, told with the times it is about. `better` is the plan that dropping the rule allows: what of it
 * the rule forbids is what stands in the way.
 */
export function bindingOf(problem: Problem, goal: Goal, rule: Rule, better: Plan): Binding {
  const own = 'than' in goal ? goal.than.plan : undefined
  switch (rule.kind) {
    case 'bay':
      return bayBinding(problem, rule.bay, better)
    case 'skill':
      return crewBinding(problem, rule.skill, better)
    case 'recoatWait': {
      const minutes = stepAt(problem, rule.step).waitMin ?? 0
      const before = (own ?? better).steps[rule.step - 1]!.end
      return { code: 'recoatWait', step: rule.step, minutes, from: before, to: before + minutes }
    }
    case 'recoatLimit': {
      const minutes = stepAt(problem, rule.step).waitMax ?? 0
      return { code: 'recoatLimit', step: rule.step, minutes }
    }
    case 'cure': {
      const end = (own ?? better).steps[rule.step]!.end
      return { code: 'cure', step: rule.step, from: end, ...opening(problem, end) }
    }
    case 'pin': {
      const { startFrom, startTo } = stepAt(problem, rule.step)
      const from = startFrom ?? startTo
      return { code: 'pinned', step: rule.step, ...(from != null && { from }) }
    }
    case 'onlyBay':
      return { code: 'onlyBay', step: rule.step }
    case 'hours':
      return hoursBinding(problem, better)
    case 'horizon':
      return { code: 'horizon', to: problem.horizon }
  }
}

/** When the doors next open, if they are shut at `t`. */
export function opening(problem: Problem, t: number): { to?: number } {
  const next = nextDoor(openTime(problem.open), t)
  return next === undefined || next === t ? {} : { to: next }
}

/** The last booking or closure of the bay that the better plan would stand in. */
function bayBinding(problem: Problem, bay: string, better: Plan): Binding {
  const stays = staysOf(better).filter(stay => stay.bay === bay)
  const over = (span: Span) => stays.some(stay => span.from < stay.to && stay.from < span.to)
  const latest = <T extends Span>(spans: readonly T[]): T | undefined =>
    spans
      .filter(over)
      .reduce<T | undefined>((last, span) => (!last || span.to > last.to ? span : last), undefined)
  const closed = latest(problem.bays.find(one => one.id === bay)?.closed ?? [])
  const taken = latest<Stay>(problem.fixed.filter(stay => stay.bay === bay))
  if (closed && (!taken || closed.to > taken.to))
    return { code: 'bayClosed', bay, from: closed.from, to: closed.to }
  const job = taken?.job
  return {
    code: 'bayTaken',
    bay,
    ...(taken && { from: taken.from, to: taken.to }),
    ...(job !== undefined && { other: job }),
  }
}

/** The first step of the better plan that has nobody to do it, and when it next would have. */
function crewBinding(problem: Problem, skill: string, better: Plan): Binding {
  const prepared = prepare(problem)
  const nobody = new Set<string>()
  for (const [i, placed] of better.steps.entries()) {
    const step = stepAt(problem, i)
    if (step.kind === 'hold' || step.skill !== skill) continue
    const team = chooseTeam(prepared, step, placed, nobody)
    if (team && chooseHelp(prepared, step, placed, team)) continue
    const starts = startsOf(prepared, step, placed.start, problem.horizon)
    const k = starts[firstEndingFrom(starts, gridCeil(prepared, placed.start))]?.from
    return {
      code: 'crewBusy',
      step: i,
      skill,
      minutes: teamSize(step) + (helpOf(step)?.crew ?? 0),
      from: placed.start,
      ...(k !== undefined && { to: minuteAt(prepared, k) }),
    }
  }
  return { code: 'crewBusy', skill }
}

/** The closed time in which the better plan would work, move or hand over. */
function hoursBinding(problem: Problem, better: Plan): Binding {
  const { horizon } = problem
  const { release } = problem.newJob
  const closed = difference([{ from: release, to: horizon }], spanSet(problem.open))
  const hours = openTime(problem.open)
  const doors = [better.handover, ...staysOf(better).map(stay => stay.from)].filter(
    t => !isDoorOpen(hours, t),
  )
  const works = better.steps.filter((_, i) => stepAt(problem, i).kind === 'work')
  const shut =
    closed.find(span => doors.some(t => span.from <= t && t < span.to)) ??
    closed.find(span => works.some(step => span.from < step.end && step.start < span.to))
  return { code: 'shopClosed', ...(shut && { from: shut.from, to: shut.to }) }
}
