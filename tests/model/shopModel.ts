/*
 * The shop as a few plain lists: what a person at the desk would expect of it, written without a look at how the services
 * do it. Rows are named by their place in their list.
 */

export interface Row {
  version: number
  archived: boolean
}

export interface CustomerState extends Row {
  name: string
}

export interface CarState extends Row {
  customer: number
}

export interface StepState {
  beganAt: number | null
  endedAt: number | null
}

export interface JobState {
  car: number
  version: number
  /** As written down: a place held stays `held` until somebody notices that its time is over. */
  status: 'held' | 'lapsed' | 'booked' | 'inShop' | 'handedOver' | 'cancelled'
  heldUntilAt: number | null
  arrivedAt: number | null
  leftAt: number | null
  steps: StepState[]
}

export interface ShopState {
  customers: CustomerState[]
  cars: CarState[]
  jobs: JobState[]
  /** What each bottle holds, in hundredths of a millilitre. */
  bottles: number[]
  /** Audit lines of customers, cars, jobs and bottles. */
  lines: number
}

export interface Model extends ShopState {
  nowAt: number
}

/** An act as the model sees it. */
export interface Planned {
  /** What may come of it: `done`, or the code it is refused with. */
  may: readonly string[]
  /** What is different once it is done. */
  done(): void
}

export const isHeld = ({ status, heldUntilAt }: JobState, nowAt: number) =>
  status === 'held' && (heldUntilAt ?? 0) > nowAt

/** The job stands on the board: its car is expected or here. */
export const stands = (job: JobState, nowAt: number) =>
  isHeld(job, nowAt) || job.status === 'booked' || job.status === 'inShop'

/** A place held whose time is over and whose hold nobody has confirmed. */
export const isLapsed = (job: JobState, nowAt: number) =>
  job.status === 'lapsed' || (job.status === 'held' && !isHeld(job, nowAt))

/** Whoever holds a place first writes down which others are over. */
export function writeLapsed(model: Model): void {
  for (const job of model.jobs)
    if (job.status === 'held' && !isHeld(job, model.nowAt)) {
      job.status = 'lapsed'
      job.version++
      model.lines++
    }
}

/** The car and its owner are both in use. */
export function carInUse(model: Model, car: number): boolean {
  const { archived, customer } = model.cars[car]!
  return !archived && !model.customers[customer]!.archived
}

/** Refused where `stale`, else done by `change`, which is one audit line. */
export function unless(model: Model, refusal: string | null, change: () => void): Planned {
  return {
    may: [refusal ?? 'done'],
    done() {
      change()
      model.lines++
    },
  }
}
