import type { Solver } from './engine/solver.ts'

/** A literal of the model, or one that always holds or never does. */
export type Literal = readonly [number, number] | boolean

/** A new yes-or-no variable's "yes". */
export function yesOrNo(solver: Solver): readonly [number, number] {
  return [2 * solver.variable(0, 1), 1]
}

export function not(literal: Literal): Literal {
  return typeof literal === 'boolean' ? !literal : [literal[0] ^ 1, 1 - literal[1]]
}

/** "At least one of them holds." */
export function anyOf(solver: Solver, literals: readonly Literal[]): void {
  if (literals.includes(true)) return
  solver.clause(literals.flatMap(one => (typeof one === 'boolean' ? [] : [...one])))
}

/** One literal for each of `count` choices, of which exactly one holds. */
function oneOf(solver: Solver, count: number): Literal[] {
  if (count === 1) return [true]
  if (count === 2) {
    const yes = yesOrNo(solver)
    return [yes, not(yes)]
  }
  const literals = Array.from({ length: count }, () => yesOrNo(solver))
  anyOf(solver, literals)
  literals.forEach((one, i) => {
    for (const other of literals.slice(0, i)) anyOf(solver, [not(one), not(other)])
  })
  return literals
}

/** One literal a group: which of the fitting ones is chosen; none may fit, and then nothing does. */
export function choices(solver: Solver, fits: readonly boolean[]): Literal[] {
  const count = fits.filter(Boolean).length
  if (count === 0) {
    anyOf(solver, [])
    return fits.map(() => false)
  }
  const literals = oneOf(solver, count)
  return fits.map(fit => fit && literals.shift()!)
}

export function holds(solver: Solver, literal: Literal): boolean {
  return typeof literal === 'boolean' ? literal : solver.trail.isTrue(literal[0], literal[1])
}

/** The condition of a link or a use: nothing for one that always holds. */
export function condition(literal: Literal): readonly [number, number] | undefined {
  return typeof literal === 'boolean' ? undefined : literal
}
