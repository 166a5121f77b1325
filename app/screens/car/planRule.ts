import { say } from '../../../main/domain/language/index.ts'
/** How often a plan repeats, as the desk says it. */
export type Repeats = 'once' | 'days' | 'weeks' | 'months' | 'years' | 'own'

const frequency = { days: 'DAILY', weeks: 'WEEKLY', months: 'MONTHLY', years: 'YEARLY' } as const

export const repeatChoices: { value: Repeats; label: string }[] = [
  { value: 'once', label: say('once') },
  { value: 'days', label: say('every so many days') },
  { value: 'weeks', label: say('every so many weeks') },
  { value: 'months', label: say('every so many months') },
  { value: 'years', label: say('every so many years') },
  { value: 'own', label: say('by a rule of its own (RFC 5545)') },
]

/** What the number in a rule counts. */
export const howMany: Readonly<Record<keyof typeof frequency, string>> = {
  days: say('How many days'),
  weeks: say('How many weeks'),
  months: say('How many months'),
  years: say('How many years'),
}

/** The RFC 5545 recurrence rule of what was chosen; `own` is taken as it is. */
export function planRule(repeats: Repeats, every: number, own: string): string {
  if (repeats === 'own') return own.trim()
  if (repeats === 'once') return 'FREQ=DAILY;COUNT=1'
  return `FREQ=${frequency[repeats]};INTERVAL=${every}`
}
