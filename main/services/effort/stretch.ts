/** What a booking's hands-on minutes are multiplied with, where the shop wants promises by what it has learned. */

import { effortFactor, learnEffort, type Visit } from '../../domain/effort/index.ts'
import { say } from '../../domain/language/index.ts'
import { median } from '../../domain/measure/index.ts'
import type { Tx } from '../../store/store.ts'
import { finishedVisits, workOf } from './finished.ts'

export { workOf }

export interface LearnedStretch {
  stretch: number
  /** What the booking screen says of it. */
  words: string[]
}

/** How many of 100 visits are to take no longer than booked; null: times as they are written. */
export async function promisePercent(tx: Tx): Promise<number | null> {
  return (await tx.effortSettings.findUnique({ where: { id: 1 } }))?.promisePercent ?? null
}

/** The stretch for a visit that is asked for; null where the shop books as it is written. */
export async function learnedStretch(
  tx: Tx,
  visit: Pick<Visit, 'sizeClass' | 'condition' | 'share' | 'correction'>,
): Promise<LearnedStretch | null> {
  const percent = await promisePercent(tx)
  if (percent === null) return null
  const visits = await finishedVisits(tx)
  // What the intake will mark nobody knows yet: as much as it usually does.
  const severity = visits.length > 0 ? median(visits.map(each => each.severity)) : 0
  const { sizeClass, condition, share, correction } = visit
  const factor = effortFactor(
    learnEffort(visits),
    { sizeClass, condition, share, correction, severity, who: null },
    percent / 100,
  )
  const stretch = Math.round(factor * 100) / 100
  const by = Math.round(Math.abs(stretch - 1) * 100)
  const than = by === 0 ? 'same' : stretch > 1 ? 'longer' : 'shorter'
  const known = say('{visits, plural, one {1 finished visit} other {{visits} finished visits}}', {
    visits: visits.length,
  })
  return {
    stretch,
    words: [
      say(
        'Hands-on times {than, select, same {as written} longer {{by} % longer than written} other {{by} % shorter than written}}: {percent} of 100 such visits take no longer ({known}).',
        { than, by, percent, known },
      ),
    ],
  }
}
