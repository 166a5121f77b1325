import { difference } from '../calendar/index.ts'
import { type Booked, projectFloor } from '../floor/index.ts'

/** Something that has not happened. */
export type Supposition =
  | { readonly kind: 'bayClosed'; readonly bayId: string; readonly fromAt: number; readonly toAt: number }
  | { readonly kind: 'away'; readonly crewId: string; readonly fromAt: number; readonly toAt: number }
  | { readonly kind: 'cureLonger'; readonly jobId: string; readonly moreMin: number }

/**
 * The floor as it would be if all of it happened: a bay closed, somebody away, the first hold of a car that is not over
 * longer. Cars in the shop are projected anew; what is booked stays where it is, so that what cannot be kept shows.
 */
export function suppose<F extends Booked>(floor: F, suppositions: readonly Supposition[]): F {
  return projectFloor(suppositions.reduce(supposed, floor))
}

/** The place in the chain of the first hold that is not over; -1: nothing has still to cure. */
export function curingAt(
  steps: readonly { readonly kind: string; readonly endAt: number }[],
  nowAt: number,
): number {
  return steps.findIndex(step => step.kind === 'hold' && step.endAt > nowAt)
}

function supposed<F extends Booked>(floor: F, one: Supposition): F {
  switch (one.kind) {
    case 'bayClosed': {
      const closure = { fromAt: one.fromAt, toAt: one.toAt, reason: '' }
      const bays = floor.bays.map(bay =>
        bay.id === one.bayId ? { ...bay, closures: [...bay.closures, closure] } : bay,
      )
      return { ...floor, bays }
    }
    case 'away': {
      const away = [{ from: one.fromAt, to: one.toAt }]
      const crew = floor.crew.map(person =>
        person.id === one.crewId ? { ...person, present: difference(person.present, away) } : person,
      )
      return { ...floor, crew }
    }
    case 'cureLonger': {
      const jobs = floor.jobs.map(job => {
        if (job.id !== one.jobId) return job
        const hold = curingAt(job.steps, floor.nowAt)
        const steps = job.steps.map((step, i) =>
          i === hold ? { ...step, minutes: step.minutes + one.moreMin } : step,
        )
        return { ...job, steps }
      })
      return { ...floor, jobs }
    }
  }
}
