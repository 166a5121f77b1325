import fc from 'fast-check'
import { confirmPlace, holdPlace, releasePlace } from '../../main/services/booking/booking.ts'
import { offers } from '../../main/services/booking/offers.ts'
import { cancelJob, handOver } from '../../main/services/job/jobActs.ts'
import { arrive, finishStep, reopenStep, startStep } from '../../main/services/job/jobSteps.ts'
import { type Act, onRow, type Which, which } from './act.ts'
import { carInUse, isHeld, isLapsed, type JobState, type Model, unless, writeLapsed } from './shopModel.ts'

const jobs = { list: (model: Model) => model.jobs, id: (ids: { jobs: string[] }) => ids.jobs }

const stepsOf = { wash: 1, correction: 2 }

/**
 * A place as soon as there is one. Where the bays are free is the scheduler's to say, and held against laws of its own:
 * here it may also find the car or no place
 * free, or another desk may take that place first; nothing is changed then.
 */
const hold = (car: number, treatment: keyof typeof stepsOf, holdMin: number): Act => ({
  words: `hold a place for car ${car}, ${treatment}, ${holdMin} min`,
  plan(model, seen) {
    if (seen.cars.length === 0) return null
    const index = car % seen.cars.length
    const done = () => {
      writeLapsed(model)
      model.jobs.push({
        car: index,
        version: 1,
        status: 'held',
        heldUntilAt: model.nowAt + holdMin,
        arrivedAt: null,
        leftAt: null,
        steps: Array.from({ length: stepsOf[treatment] }, () => ({ beganAt: null, endedAt: null })),
      })
      model.lines++
    }
    return {
      may: carInUse(model, index) ? ['done', 'vehicle-booked', 'no-place', 'stale'] : ['missing'],
      done,
    }
  },
  async really(desk, ids, seen) {
    const asked = { condition: 'good' as const, treatmentIds: [ids.shop.treatments[treatment]] }
    const { soonest } = await offers(desk, { ...asked, sizeClass: 'medium' })
    if (!soonest.feasible) throw { code: 'no-place' }
    const vehicleId = ids.cars[car % seen.cars.length]!
    ids.jobs.push((await holdPlace(desk, { ...asked, vehicleId, plan: soonest.plan, holdMin })).jobId)
  },
})

const confirm = (row: Which): Act =>
  onRow<JobState>(row, {
    ...jobs,
    words: 'confirm job',
    plan(model, job, { stale }) {
      const held = isHeld(job, model.nowAt)
      const late = isLapsed(job, model.nowAt)
      const { may, done } = unless(
        model,
        !held && !late
          ? 'not-held'
          : !carInUse(model, job.car)
            ? 'missing'
            : stale && job.status === 'held'
              ? 'stale'
              : null,
        () => Object.assign(job, { status: 'booked', heldUntilAt: null, version: job.version + 1 }),
      )
      // Somebody may have the place by now, or its day may be over.
      return { may: late && may[0] !== 'missing' ? [...may, 'vehicle-booked', 'stale'] : may, done }
    },
    really: (desk, { id, version }) => confirmPlace(desk, { jobId: id, version }),
  })

const release = (row: Which): Act =>
  onRow<JobState>(row, {
    ...jobs,
    words: 'let go of job',
    plan(model, job, { stale }) {
      // What is over already needs no letting go.
      if (job.status === 'lapsed') return { may: ['done'], done: () => {} }
      return unless(model, stale || job.status !== 'held' ? 'stale' : null, () =>
        Object.assign(job, { status: 'cancelled', heldUntilAt: null, version: job.version + 1 }),
      )
    },
    really: (desk, { id, version }) => releasePlace(desk, { jobId: id, version }),
  })

/** An act on a job, refused with `refusal` where the job is not at that point of its life. */
const jobAct = (
  words: string,
  row: Which,
  refusal: (job: JobState, model: Model) => string | null,
  change: (job: JobState, model: Model) => void,
  really: Parameters<typeof onRow<JobState>>[1]['really'],
): Act =>
  onRow<JobState>(row, {
    ...jobs,
    words,
    plan: (model, job, { stale }) =>
      unless(model, stale ? 'stale' : refusal(job, model), () => {
        change(job, model)
        job.version++
      }),
    really,
  })

const cancel = (row: Which) =>
  jobAct(
    'call off job',
    row,
    (job, { nowAt }) => (isHeld(job, nowAt) || job.status === 'booked' ? null : 'not-booked'),
    job => {
      job.status = 'cancelled'
    },
    (desk, seen) => cancelJob(desk, { ...seen, reason: 'rang to say so' }),
  )

const carComes = (row: Which) =>
  jobAct(
    'the car comes, job',
    row,
    job => (job.status === 'booked' ? null : 'not-booked'),
    (job, { nowAt }) => Object.assign(job, { status: 'inShop', arrivedAt: nowAt }),
    arrive,
  )

const begin = (row: Which, position: number) =>
  jobAct(
    `begin step ${position} of job`,
    row,
    ({ status, steps }) =>
      status !== 'inShop'
        ? 'not-here'
        : !steps[position]
          ? 'missing'
          : steps[position].beganAt !== null
            ? 'begun'
            : steps.slice(0, position).some(step => step.endedAt === null)
              ? 'not-its-turn'
              : null,
    ({ steps }, { nowAt }) => {
      steps[position]!.beganAt = nowAt
    },
    // Whether somebody else stands there is for the floor to say: here it is always seen and gone on.
    (desk, seen) => startStep(desk, { ...seen, position, accepted: true }),
  )

const finish = (row: Which, position: number) =>
  jobAct(
    `finish step ${position} of job`,
    row,
    ({ status, steps }) =>
      status !== 'inShop'
        ? 'not-here'
        : !steps[position]
          ? 'missing'
          : steps[position].beganAt === null
            ? 'not-begun'
            : steps[position].endedAt !== null
              ? 'done already'
              : null,
    ({ steps }, { nowAt }) => {
      steps[position]!.endedAt = nowAt
    },
    (desk, seen) => finishStep(desk, { ...seen, position }),
  )

const takeBack = (row: Which) =>
  jobAct(
    'take back the last time of job',
    row,
    job => (job.status === 'inShop' ? null : 'not-here'),
    job => {
      const last = job.steps.findLast(step => step.beganAt !== null)
      if (!last) Object.assign(job, { status: 'booked', arrivedAt: null })
      else if (last.endedAt !== null) last.endedAt = null
      else last.beganAt = null
    },
    reopenStep,
  )

const carGoes = (row: Which, reason: string) =>
  jobAct(
    `the car goes${reason ? ' as it is' : ''}, job`,
    row,
    ({ status, steps }) =>
      status !== 'inShop'
        ? 'not-here'
        : reason === '' && steps.some(step => step.endedAt === null)
          ? 'reason-needed'
          : null,
    (job, { nowAt }) => Object.assign(job, { status: 'handedOver', leftAt: nowAt }),
    (desk, seen) => handOver(desk, { ...seen, reason }),
  )

/** What a job is waiting for, as the person sees it. */
function nextOf({ jobs }: Model, { index, behind }: Which): Act | null {
  const open = jobs.flatMap(({ status }, i) => (['held', 'booked', 'inShop'].includes(status) ? [i] : []))
  if (open.length === 0) return null
  const row = { index: open[index % open.length]!, behind }
  const { status, steps } = jobs[row.index]!
  if (status === 'held') return confirm(row)
  if (status === 'booked') return carComes(row)
  const step = steps.findIndex(each => each.endedAt === null)
  if (step < 0) return carGoes(row, '')
  return steps[step]!.beganAt === null ? begin(row, step) : finish(row, step)
}

const goOn = (row: Which): Act => ({
  words: `go on with open job ${row.index}${row.behind > 0 ? ', seen before a change' : ''}`,
  plan: (model, seen) => nextOf(seen, row)?.plan(model, seen) ?? null,
  really: async (desk, ids, seen) => nextOf(seen, row)?.really(desk, ids, seen),
})

const position = fc.nat(1)
const treatment = fc.constantFrom('wash' as const, 'correction' as const)

export const jobActs: fc.Arbitrary<Act>[] = [
  fc.tuple(fc.nat(9), treatment, fc.integer({ min: 5, max: 240 })).map(each => hold(...each)),
  ...[...'123456'].map(() => which.map(goOn)),
  which.map(confirm),
  which.map(release),
  which.map(cancel),
  which.map(carComes),
  fc.tuple(which, position).map(each => begin(...each)),
  fc.tuple(which, position).map(each => finish(...each)),
  which.map(takeBack),
  fc.tuple(which, fc.constantFrom('', 'needs it back')).map(each => carGoes(...each)),
]
