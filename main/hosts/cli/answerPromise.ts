import {
  explain,
  type NoOffer,
  type Offer,
  type Problem,
  promise,
  readCase,
  reasonText,
} from '../../domain/schedule/index.ts'
import { plainWords } from './plainWords.ts'

/** Reads a case with one new job; the function it returns answers with the three offers and what binds them. */
export function answerPromise(json: unknown, field: string) {
  const problem = readCase(json, field)
  return () => {
    const started = performance.now()
    const offers = promise(problem)
    const seconds = Number(((performance.now() - started) / 1000).toFixed(6))
    return {
      id: problem.id ?? null,
      offers: {
        soonest: told(problem, offers.soonest),
        leastBlocked: told(problem, offers.leastBlocked),
        askedDay: told(problem, offers.askedDay),
      },
      seconds,
    }
  }
}

function told(problem: Problem, offer: Offer | NoOffer) {
  const reasons = explain(problem, offer).map(reason => ({ ...reason, text: reasonText(reason, plainWords) }))
  if (!offer.feasible) return { feasible: false, proven: true, reasons }
  const { handover, blockedOpen, moves, dropOff, plan, closedCure } = offer
  return {
    objective: { handover, blockedOpen, moves, dropOff },
    proven: true,
    plan: { [problem.newJob.id]: plan },
    stays: offer.stays,
    closedCure,
    reasons,
  }
}
