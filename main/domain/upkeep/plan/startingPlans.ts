import { dateOfDay, dayNumber } from '../../calendar/index.ts'
import { say } from '../../language/index.ts'
import type { Plan } from './plan.ts'

/** What a car's first plans are made from. Days are whole and counted from the handover. */
export interface UpkeepStart {
  readonly handoverOn: string
  /** From the cure profile: when the car may first be washed. */
  readonly firstWashDays: number
  /** When the shop likes to look at its work again. */
  readonly checkUpDays: number
  /** The topper's scaled interval. */
  readonly topperDays: number
}

/** The rule of a topper renewed every so many days. */
export function topperRule(days: number): string {
  return `FREQ=DAILY;INTERVAL=${days}`
}

/**
 * The plans a coated car starts with: a first wash and a check-up once, the topper by its interval from the last
 * renewal, and a yearly inspection from the last one. Windows are common practice, no source; each is a plan like any
 * other, for the shop to change. `idOf` names them.
 */
export function startingPlans(start: UpkeepStart, idOf: (kind: Plan['kind']) => string): Plan[] {
  const handover = dayNumber(start.handoverOn, 'handoverOn')
  const once = (kind: Plan['kind'], title: string, afterDays: number, early: number, late: number): Plan => ({
    id: idOf(kind),
    kind,
    title,
    rule: 'FREQ=DAILY;COUNT=1',
    anchor: { to: 'date', on: dateOfDay(handover + afterDays) },
    earlyDays: early,
    lateDays: late,
  })
  const since = { to: 'last-done', since: start.handoverOn, event: say('the coating') } as const
  return [
    // Never early: the cure profile says when water may first touch it.
    once('first-wash', say('first wash'), start.firstWashDays, 0, 14),
    once('check-up', say('check-up'), start.checkUpDays, 7, 14),
    {
      id: idOf('topper'),
      kind: 'topper',
      title: say('topper renewal'),
      rule: topperRule(start.topperDays),
      anchor: since,
      earlyDays: 21,
      lateDays: 7,
    },
    {
      id: idOf('inspection'),
      kind: 'inspection',
      title: say('yearly inspection'),
      rule: 'FREQ=YEARLY',
      anchor: since,
      earlyDays: 30,
      lateDays: 30,
    },
  ]
}
