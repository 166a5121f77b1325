/** What the solver is made of; each can be switched off to see what it brings. */
export interface LayParts {
  /** Begin with the best of some serial insertions. */
  readonly insertion: boolean
  /** Begin with the present plan too where some of its cars cannot stay, with new places for those alone. */
  readonly repair: boolean
  /** Learn the cause of a conflict; without it, only that these decisions do not go together. */
  readonly learning: boolean
  /** Decide first what conflicts ran through lately. */
  readonly activity: boolean
  /** Improve the best plan with most of it held. */
  readonly neighbourhoods: boolean
  /** Also ask for much less than the best, so that the bound rises while the plan does not improve. */
  readonly bisection: boolean
}

/** Everything on. */
export const allParts: LayParts = {
  insertion: true,
  repair: true,
  learning: true,
  activity: true,
  neighbourhoods: true,
  bisection: true,
}
