/** The spreading problem once more as linear programmes, solved by HiGHS goal after goal. */
import loader from 'highs'
import type { SpreadVisit } from '../../../../main/domain/upkeep/spread/spread.ts'

// The package's types describe its CommonJS face, where the loader sits one level deeper.
const highs = await (loader as unknown as typeof loader.default)()

export interface Goals {
  left: number
  late: number
  early: number
}

/** Weeks a visit is late or early in a week, beyond what it is in the best week it has. */
export function regret(visit: SpreadVisit, week: number, weeks: number): { late: number; early: number } {
  const first = Math.max(0, visit.first)
  const last = Math.min(weeks - 1, visit.last)
  return {
    late: Math.max(0, week - visit.due) - Math.max(0, first - visit.due),
    early: Math.max(0, visit.due - week) - Math.max(0, visit.due - last),
  }
}

/** The best left over, then lateness, then earliness, of visits that have at least one week in the plan. */
export function solveWithHighs(visits: readonly SpreadVisit[], room: readonly number[]): Goals {
  const late: string[] = []
  const early: string[] = []
  const left: string[] = []
  const perWeek: string[][] = room.map(() => [])
  const rows: string[] = []
  visits.forEach((visit, i) => {
    const choices = [`u${i}`]
    left.push(`1 u${i}`)
    for (let w = Math.max(0, visit.first); w <= Math.min(room.length - 1, visit.last); w++) {
      const name = `x${i}_${w}`
      choices.push(name)
      perWeek[w]!.push(name)
      const cost = regret(visit, w, room.length)
      if (cost.late > 0) late.push(`${cost.late} ${name}`)
      if (cost.early > 0) early.push(`${cost.early} ${name}`)
    }
    rows.push(`v${i}: ${choices.join(' + ')} = 1`)
  })
  perWeek.forEach((names, w) => {
    if (names.length > 0) rows.push(`w${w}: ${names.join(' + ')} <= ${room[w]}`)
  })
  const solve = (goal: readonly string[], fixed: readonly string[]) => {
    if (goal.length === 0) return 0
    const model = `Minimize\n obj: ${goal.join('\n + ')}\nSubject To\n${[...rows, ...fixed].join('\n')}\nEnd`
    const answer = highs.solve(model, { output_flag: false })
    if (answer.Status !== 'Optimal') throw new Error(`HiGHS: ${answer.Status}`)
    return Math.round(answer.ObjectiveValue)
  }
  const hold = (name: string, goal: readonly string[], value: number) =>
    goal.length === 0 ? [] : [`${name}: ${goal.join(' + ')} <= ${value}`]
  const leftOver = solve(left, [])
  const heldLeft = hold('hl', left, leftOver)
  const lateness = solve(late, heldLeft)
  const earliness = solve(early, [...heldLeft, ...hold('ht', late, lateness)])
  return { left: leftOver, late: lateness, early: earliness }
}
