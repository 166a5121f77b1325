/** What a new shop has still to enter before the app can answer for it, in the order it is wanted. */

const firstSteps = ['prices', 'cure', 'booking', 'shelf', 'papers', 'mail'] as const
export type FirstStep = (typeof firstSteps)[number]

/** How long a new shop is reminded of them, in minutes: two weeks, since few are through in one. */
const remindedMin = 14 * 1_440

/**
 * The first steps, each with whether it is done; null once all are, or two weeks after the shop was set up.
 * @param done which of them the shop's data show as done
 * @param sinceMin minutes since the shop was set up; null where nobody knows
 */
export function firstWeek(
  done: Readonly<Record<FirstStep, boolean>>,
  sinceMin: number | null,
): { step: FirstStep; done: boolean }[] | null {
  if (sinceMin === null || sinceMin > remindedMin || firstSteps.every(step => done[step])) return null
  return firstSteps.map(step => ({ step, done: done[step] }))
}
