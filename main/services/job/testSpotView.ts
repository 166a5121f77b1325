/** What a test spot does to its job: the rest laid anew with the minutes it showed, and priced anew. */

import {
  can,
  correctionAfter,
  correctionOf,
  priceAfter,
  spotCautions,
  spotPriceWeight,
} from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { saleMinor } from '../../domain/money/index.ts'
import { type SizeClass, shareOf } from '../../domain/shop/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from '../floor/floor.ts'
import type { JobRow } from '../floor/jobRows.ts'
import { laidAnew } from '../floor/laidAnew.ts'
import { chargesOn } from './chargesOn.ts'

export type Spot = NonNullable<Awaited<ReturnType<Tx['testSpot']['findUnique']>>>

/** What stood before an agreed answer, as it is put back. */
export interface SpotBefore {
  readonly promisedAt: number
  readonly plannedHandoverAt: number
  readonly handoverAt: number
  readonly prices: readonly { readonly id: string; readonly priceMinor: number }[]
  readonly steps: JobRow['steps']
}

/** The job as it would be with the minutes the spot showed. */
export interface SpotChange {
  readonly job: JobRow
  readonly beforeMin: number
  readonly afterMin: number
  readonly prices: SpotBefore['prices']
}

/** Whether the job begins with a test spot, and whether its correction is still a plan. */
export function spotState(steps: JobRow['steps']) {
  const test = steps.find(step => step.kind === 'work' && step.stage === 'test')
  const { all, ahead } = correctionOf(steps)
  return { test, planned: all.length > 0 && all.length === ahead.length }
}

/** Lays and prices the rest anew. */
export async function spotChange(
  tx: Tx,
  floor: Floor,
  job: JobRow,
  spot: Pick<Spot, 'perPanelMin'>,
): Promise<SpotChange> {
  const sold = await correctingTreatments(tx, job)
  const share = Math.max(0, ...sold.map(each => each.share))
  const minutes = correctionAfter(job.steps, { perPanelMin: spot.perPanelMin, share, gridMin: floor.gridMin })
  const sum = (of: (step: JobRow['steps'][number], i: number) => number) =>
    correctionOf(job.steps).ahead.reduce((total, i) => total + of(job.steps[i]!, i), 0)
  const beforeMin = sum(step => step.minutes)
  const afterMin = sum((_, i) => minutes[i] ?? 0)
  const longer = {
    ...job,
    steps: job.steps.map((step, i) => ({ ...step, minutes: minutes[i] ?? step.minutes })),
  }
  const prices = job.treatments.map(({ id, priceMinor }) => {
    const weight = sold.find(each => each.id === id)?.weight ?? 0
    return { id, priceMinor: priceAfter(priceMinor, weight, { before: beforeMin, after: afterMin }) }
  })
  return {
    job: await laidAnew(tx, floor, longer, correctionOf(job.steps).ahead[0] ?? 0),
    beforeMin,
    afterMin,
    prices,
  }
}

/** The sold treatments that correct, with their share of the paint and the part of their price that is correction. */
async function correctingTreatments(tx: Tx, job: JobRow) {
  const rows = await tx.treatment.findMany({
    where: { id: { in: job.treatments.map(each => each.treatmentId) } },
    select: { id: true, steps: { select: { stage: true, minutes: true } } },
  })
  const size = job.vehicle.sizeClass as SizeClass
  return job.treatments.flatMap(({ id, treatmentId, share }) => {
    const steps = (rows.find(row => row.id === treatmentId)?.steps ?? []).map(({ stage, minutes }) => ({
      stage,
      minutes: fromJson<Record<SizeClass, number>>(minutes)[size] * shareOf({ stage }, share),
    }))
    const weight = spotPriceWeight(steps)
    return weight > 0 ? [{ id, share, weight }] : []
  })
}

/** The test spot for the job's page: what may be done with it, what it showed, before and after. */
export async function spotView(tx: Tx, floor: Floor, job: JobRow) {
  const { test, planned } = spotState(job.steps)
  if (!test) return null
  const spot = await tx.testSpot.findUnique({ where: { jobId: job.id } })
  const here = can(job, 'work') && planned
  const open = here && spot !== null && spot.answer === null
  return {
    /** Its result may be written down: the spot was begun and the correction was not. */
    canRecord: here && test.actualStartAt !== null && (spot === null || spot.answer === null),
    canAnswer: open,
    canTakeBack: here && spot !== null,
    result: spot && {
      combination: spot.combination,
      perPanelMin: spot.perPanelMin,
      lostUm: spot.lostUm,
      glossBefore: spot.glossBefore,
      glossAfter: spot.glossAfter,
      who: spot.who,
      at: spot.at,
    },
    cautions: spot ? spotCautions(spot, floor.shop.units) : [],
    answer:
      spot?.answer == null
        ? null
        : {
            said: spot.answer,
            by: spot.answeredBy ?? '',
            how: spot.answeredHow ?? '',
            at: spot.answeredAt ?? 0,
          },
    change:
      spot && (open ? await openChange(tx, floor, job, spot) : await agreedChange(tx, floor, job, spot)),
  }
}

/** What the job comes to with these prices: with what comes on top and off. */
async function priceWith(tx: Tx, floor: Floor, job: JobRow) {
  const charges = await chargesOn(tx, job.id)
  return (prices: readonly { readonly priceMinor: number }[]) =>
    saleMinor(prices, charges, floor.shop.currency)
}

async function openChange(tx: Tx, floor: Floor, job: JobRow, spot: Spot) {
  const { job: after, beforeMin, afterMin, prices } = await spotChange(tx, floor, job, spot)
  const priceOf = await priceWith(tx, floor, job)
  const bayOf = (step: JobRow['steps'][number]) => floor.bayNames.get(step.bayId) ?? ''
  return {
    minutes: { before: beforeMin, after: afterMin },
    handoverAt: { before: job.handoverAt, after: after.handoverAt },
    priceMinor: { before: priceOf(job.treatments), after: priceOf(prices) },
    /** Steps that go to another bay. */
    places: after.steps.flatMap((step, i) => {
      const before = job.steps[i]
      return before && step.kind === 'work' && before.bayId !== step.bayId
        ? [
            say('"{name}" in {step} instead of {before}', {
              name: step.name,
              step: bayOf(step),
              before: bayOf(before),
            }),
          ]
        : []
    }),
  }
}

/** What an answer that was agreed to has changed. */
async function agreedChange(tx: Tx, floor: Floor, job: JobRow, spot: Spot) {
  const before = fromJson<SpotBefore | null>(spot.before)
  if (!before) return null
  const priceOf = await priceWith(tx, floor, job)
  const minutes = (steps: JobRow['steps']) =>
    correctionOf(steps).all.reduce((sum, i) => sum + (steps[i]?.minutes ?? 0), 0)
  return {
    minutes: { before: minutes(before.steps), after: minutes(job.steps) },
    handoverAt: { before: before.handoverAt, after: job.handoverAt },
    priceMinor: { before: priceOf(before.prices), after: priceOf(job.treatments) },
    places: [],
  }
}

/** What is asked before a correction is begun on which the customer has not answered yet. */
export async function unansweredSpot(tx: Tx, jobId: string, stage: string): Promise<string[]> {
  if (stage !== 'correct') return []
  const spot = await tx.testSpot.findUnique({ where: { jobId }, select: { answer: true } })
  return spot?.answer === null ? [say('The customer has not answered the test spot yet.')] : []
}
