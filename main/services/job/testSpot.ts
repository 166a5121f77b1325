/** A test spot's result, what the customer answers to it, and the way back from both. */

import { assertFits, planOf } from '../../domain/floor/index.ts'
import { say, word } from '../../domain/language/index.ts'
import { allocate, saleMinor, sumMinor } from '../../domain/money/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkText } from '../../domain/shop/index.ts'
import { fromJson, noJson, toJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { type JobRow, jobRows } from '../floor/jobRows.ts'
import { moveProblem } from '../floor/movePlan.ts'
import { writePlaces } from '../floor/placed.ts'
import { assertCan } from './assertCan.ts'
import { chargesOn } from './chargesOn.ts'
import type { SpotAnswerInput, SpotInput } from './inputs.ts'
import { changeJob, type JobNow } from './jobChange.ts'
import { type SpotBefore, spotChange, spotState } from './testSpotView.ts'

const noSpot = word('Nothing is recorded of a test spot; look at the job again.')

/** Writes down what the spot showed; until the customer has answered it may be written down anew. */
export function recordSpot(desk: Desk, input: SpotInput): Promise<{ version: number }> {
  const { id, version, perPanelMin, lostUm, glossBefore, glossAfter } = input
  return changeJob(desk, { id, version }, async now => {
    const { spot } = await spotIn(now)
    if (spot !== null && spot.answer !== null)
      refuse(
        'answered',
        { combination: input.combination },
        say('The customer has answered this one: take that back first.'),
      )
    if (perPanelMin < 1)
      refuse('panel-minutes', { perPanelMin }, say('Give the minutes one panel takes: at least one.'))
    for (const [field, value, most] of [
      ['lostUm', lostUm, 100],
      ['glossBefore', glossBefore, 2_000],
      ['glossAfter', glossAfter, 2_000],
    ] as const)
      if (value !== null && (value < 0 || value > most))
        refuse(
          'reading-impossible',
          { [field]: value },
          say('{value} is no such reading: give 0 to {most}, or leave it empty.', { value, most }),
        )
    const combination = checkText(input.combination, 'combination', say('What worked'), 300)
    const data = {
      combination,
      perPanelMin,
      lostUm,
      glossBefore,
      glossAfter,
      who: desk.who,
      at: now.floor.nowAt,
    }
    return {
      act: 'test spot',
      detail: { combination, perPanelMin },
      also: tx => tx.testSpot.upsert({ where: { jobId: id }, create: { jobId: id, ...data }, update: data }),
    }
  })
}

/**
 * What the customer says to it. Agreed, the correction takes the time the spot showed: the rest is laid, priced and
 * promised anew in the same act. Declined, all stays as it was booked. Either way it is kept who said so, and how.
 */
export function answerSpot(desk: Desk, input: SpotAnswerInput): Promise<{ version: number }> {
  const { id, version, answer, how, priceMinor } = input
  return changeJob(desk, { id, version }, async now => {
    const { spot, row } = await spotIn(now)
    const open = found(spot, { id }, say(noSpot))
    if (open.answer !== null)
      refuse('answered', { answer }, say('The customer has answered already: take that back first.'))
    const by = checkText(input.by, 'by', say('The name of who answered'), 80)
    const answered = { answer, answeredBy: by, answeredHow: how, answeredAt: now.floor.nowAt }
    const keep = (tx: Tx, before?: SpotBefore) =>
      tx.testSpot.update({
        where: { jobId: id },
        data: { ...answered, ...(before && { before: toJson(before) }) },
      })
    const detail = { answer, by, how }
    if (answer === 'declined') return { act: 'test spot answered', detail, also: tx => keep(tx) }
    if (priceMinor < 0) refuse('price-negative', { priceMinor }, say('A price is no less than nothing.'))
    // The price agreed on is the whole of it, with what comes on top and off; the treatments cost the rest.
    const ofTreatments = priceMinor - saleMinor([], await chargesOn(now.tx, id), now.floor.shop.currency)
    if (ofTreatments < 0)
      refuse('price-low', { priceMinor }, say('The extras alone cost more; take them off the bill first.'))
    const change = await spotChange(now.tx, now.floor, row, open)
    const { handoverAt, steps } = change.job
    const before: SpotBefore = {
      promisedAt: row.promisedAt,
      plannedHandoverAt: row.plannedHandoverAt,
      handoverAt: row.handoverAt,
      prices: row.treatments.map(({ id, priceMinor }) => ({ id, priceMinor })),
      steps: row.steps.map(({ laid: _, ...step }) => step),
    }
    return {
      // What was sooner than promised is not promised sooner: the customer has a day to be glad of.
      data: { promisedAt: Math.max(row.promisedAt, handoverAt), plannedHandoverAt: handoverAt },
      insert: tx => writePlaces(tx, ahead(steps)),
      act: 'test spot answered',
      detail: { ...detail, beforeMin: change.beforeMin, afterMin: change.afterMin, handoverAt, priceMinor },
      also: async tx => {
        await keep(tx, before)
        await writePrices(tx, change.prices, ofTreatments)
      },
    }
  })
}

/** Takes back the answer, and with it what it changed, where nobody has taken the old places; without an answer, the result. */
export function takeSpotBack(
  desk: Desk,
  { id, version }: { id: string; version: number },
): Promise<{ version: number }> {
  return changeJob(desk, { id, version }, async now => {
    const { spot, row } = await spotIn(now)
    const stored = found(spot, { id }, say(noSpot))
    if (stored.answer === null)
      return {
        act: 'test spot taken back',
        detail: { what: 'its result' },
        also: tx => tx.testSpot.delete({ where: { jobId: id } }),
      }
    const unanswered = { answer: null, answeredBy: null, answeredHow: null, answeredAt: null, before: noJson }
    const base = {
      act: 'test spot taken back',
      detail: { what: `${stored.answer} by ${stored.answeredBy}` },
    }
    const forget = (tx: Tx) => tx.testSpot.update({ where: { jobId: id }, data: unanswered })
    const before = fromJson<SpotBefore | null>(stored.before)
    if (!before) return { ...base, also: forget }
    const { promisedAt, plannedHandoverAt, prices } = before
    const steps = planned(before.steps)
    assertFree(now, { ...row, steps, handoverAt: plannedHandoverAt })
    return {
      ...base,
      data: { promisedAt, plannedHandoverAt },
      insert: tx => writePlaces(tx, ahead(steps)),
      also: async tx => {
        await forget(tx)
        await writePrices(tx, prices, sumMinor(prices.map(each => each.priceMinor)))
      },
    }
  })
}

/** The spot and its job's row, where the job is here and its correction has not begun. */
async function spotIn({ tx, row, floor }: JobNow) {
  assertCan(row, 'work')
  const [job] = await jobRows(tx, floor, { id: row.id })
  const { test, planned } = spotState(found(job, { id: row.id }, say(noSpot)).steps)
  if (!test) refuse('no-spot', { id: row.id }, say('This job was booked without a test spot.'))
  if (test.actualStartAt === null)
    refuse(
      'spot-not-begun',
      { id: row.id },
      say('"{name}" has not been begun: start it first.', { name: test.name }),
    )
  if (!planned)
    refuse(
      'correction-begun',
      { id: row.id },
      say('The correction has begun, so the spot’s figures stand as they are.'),
    )
  return { spot: await tx.testSpot.findUnique({ where: { jobId: row.id } }), row: job! }
}

/** From the correction on: what a test spot changes. */
function ahead(steps: JobRow['steps']): JobRow['steps'] {
  const first = steps.findIndex(step => step.kind === 'work' && step.stage === 'correct')
  return steps.slice(first)
}

function planned(steps: JobRow['steps']): JobRow['steps'] {
  return steps.map(step => ({ ...step, startAt: step.plannedAt, endAt: step.plannedEndAt }))
}

/** The old places are looked at once more before they are taken again. */
function assertFree({ floor }: JobNow, job: JobRow): void {
  const rest = ahead(job.steps)
  const index = job.steps.length - rest.length
  const { bayId = '', startAt = 0 } = rest[0] ?? {}
  const problem = moveProblem({ floor, job, index }, { bays: [bayId], from: startAt, to: startAt })
  assertFits(
    floor,
    problem,
    planOf({ steps: rest, handoverAt: job.handoverAt }),
    rest.map(step => step.name),
  )
}

/** Writes what each treatment now costs, so that they add up to the price agreed on. */
async function writePrices(tx: Tx, prices: SpotBefore['prices'], totalMinor: number): Promise<void> {
  const each = prices.map(({ priceMinor }) => Math.max(priceMinor, 0))
  const parts =
    sumMinor(each) === 0
      ? allocate(
          totalMinor,
          each.map(() => 1),
        )
      : allocate(totalMinor, each)
  for (const [i, { id }] of prices.entries())
    await tx.jobTreatment.update({ where: { id }, data: { priceMinor: parts[i] ?? 0 } })
}
