/** What cures on a day, and from when each car may be touched, topped and driven, by its profile. */

import {
  type CureMarks,
  coatsOf,
  jobStays,
  leavingOf,
  leavingTimes,
  marksOf,
} from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { sentence } from '../../domain/words.ts'
import type { JobRow } from '../floor/jobRows.ts'
import { carOf, type Day, daySays, isOn } from './morningDay.ts'

export type MorningCure = ReturnType<typeof cureOf>[number]

/** The coats of a job that are laid or reach a moment of theirs on the day, and were not covered before it. */
export function cureOf(day: Day, row: JobRow) {
  const { floor, products } = day
  // Nothing was laid on a car that has not come, and one that has left is its owner's to mind.
  if (row.status === 'handedOver' || (row.status === 'booked' && row.dropOffAt < floor.nowAt)) return []
  const { safeAt, advisedAt } = leavingTimes(row.steps, products, leavingOf(row))
  const coats = coatsOf(row.steps, products)
  return coats.flatMap((coat, i) => {
    const marks = marksOf(coat, leavingOf(row))
    const next = coats[i + 1]
    const last = next === undefined
    const windows = [marks.recoatOpensAt, marks.topperAt, marks.topperClosesAt].flatMap(at => at ?? [])
    const moments = [marks.coatEndAt, marks.tackFreeAt, ...(last ? [safeAt, advisedAt] : windows)]
    if (!moments.some(at => isOn(day, at)) || (next && next.endAt <= day.fromAt)) return []
    const at = Math.max(marks.coatEndAt, day.fromAt)
    const stands = jobStays(row).find(stay => stay.from <= at && at < stay.to)
    const toTopper = row.steps.slice(coat.index).some(step => step.kind === 'work' && step.stage === 'topper')
    const topperAt = toTopper ? marks.topperAt : null
    const over = next && row.steps[next.index]
    const whatNext: 'layer' | 'topper' | null = over ? (over.stage === 'topper' ? 'topper' : 'layer') : null
    return [
      {
        ...carOf(row),
        bayName: floor.bayNames.get(stands?.bay ?? row.steps[coat.index]?.bayId ?? '') ?? '',
        productName: coat.product.name,
        marks,
        touchAt: marks.tackFreeAt,
        topperAt,
        driveAt: safeAt,
        advisedAt,
        /** What comes over it; null: nothing, so its clock lets the car go. */
        next: whatNext,
        words: over
          ? sentence(
              say('"{name}" {day}; the data sheet decides', {
                name: over.name,
                day: windowWords(day, over.stage, marks),
              }),
            )
          : sentence(say('these are the figures of its profile; the data sheet decides')),
      },
    ]
  })
}

/** When what comes over a coat may go on: a topper in its own window, a layer in the recoat window. */
function windowWords(day: Day, stage: string, marks: CureMarks): string {
  const isTopper = stage === 'topper' && marks.topperAt !== null
  const opensAt = (isTopper ? marks.topperAt : marks.recoatOpensAt) ?? marks.tackFreeAt
  const closesAt = isTopper ? marks.topperClosesAt : marks.recoatClosesAt
  return closesAt === null
    ? say('from {day}', { day: daySays(day, opensAt) })
    : say('{day} to {day2}', { day: daySays(day, opensAt), day2: daySays(day, closesAt) })
}
