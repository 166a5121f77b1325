import {
  type SpreadResult,
  type SpreadVisit,
  spreadInSteps,
} from '../../../../main/domain/upkeep/spread/spread.ts'

/** A spread to its end. */
export function spread(visits: readonly SpreadVisit[], room: readonly number[]): SpreadResult {
  const steps = spreadInSteps(visits, room)
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
  }
}
