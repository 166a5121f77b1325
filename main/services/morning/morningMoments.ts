/** The milestones of a day's cures in the order they come, for the sheet that the crew reads. */

import { say } from '../../domain/language/index.ts'
import type { MorningCure } from './morningCures.ts'
import { type Day, isOn } from './morningDay.ts'

/** What may be done, or may no longer be, from each moment on. */
export function momentsOf(day: Day, cures: readonly MorningCure[]) {
  return cures
    .flatMap(cure => {
      const { jobId, jobNumber, plate, customerName, vehicleWords, bayName, productName, marks } = cure
      const car = { jobId, jobNumber, plate, customerName, vehicleWords, bayName, productName }
      return momentsIn(cure).flatMap(([at, what]) =>
        // `measured`: by the running clock of a coat that is laid; else as planned.
        at !== null && isOn(day, at) ? [{ ...car, at, what, measured: marks.clock !== null }] : [],
      )
    })
    .sort((a, b) => a.at - b.at)
}

function momentsIn({ marks, touchAt, driveAt, advisedAt, next }: MorningCure): [number | null, string][] {
  const touch: [number, string] = [touchAt, say('▲ safe to touch')]
  if (next === null)
    return [
      touch,
      // Where both are one moment it is said once.
      [driveAt === advisedAt ? null : driveAt, say('● earliest pick-up')],
      [advisedAt, say('○ recommended pick-up')],
    ]
  if (next === 'topper')
    return [
      touch,
      [marks.topperAt, say('◆ topper may go on')],
      [marks.topperClosesAt, say('◆ topper at the latest')],
    ]
  return [
    touch,
    [marks.recoatOpensAt, say('next layer may go on')],
    [marks.recoatClosesAt, say('next layer at the latest')],
  ]
}
